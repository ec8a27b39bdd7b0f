package blankwright.project;

import blankwright.num.Spelling;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A YAML text as words, lists and maps with their places; anchors, aliases, tags, repeated keys and deep nesting are refused. */
sealed interface Node {
    /** Deeper than anything we read. */
    int DEEPEST = 6;

    /** What a file is for, as messages call it. */
    enum Kind {
        RECIPE("a recipe", "blankwright-recipe", Recipe.VERSION, 5000), ALLOYS("an alloy table", "blankwright-alloys", 1, 50_000),
        TOOLS("a tool list", "blankwright-tools", 1, 5000);

        private final String name;
        private final String key;
        private final int version;
        private final int longest;          // more words than any has

        Kind(String name, String key, int version, int longest) {
            this.name = name;
            this.key = key;
            this.version = version;
            this.longest = longest;
        }

        /** {@code a recipe}. */
        String called() {
            return name;
        }

        /** The key that opens the file and gives its version. */
        String key() {
            return key;
        }

        /** The latest version that is read. */
        int version() {
            return version;
        }
    }

    /** How the scanner below the parser says what is wrong and where: a line, then its place. */
    Pattern PROBLEM = Pattern.compile("^(.+)\\R in '[^']*', line (\\d{1,9}), column (\\d{1,9}):", Pattern.MULTILINE);

    int line();

    int column();

    /** What it is, for messages. */
    String what();

    record Word(String text, int line, int column) implements Node {
        @Override public String what() {
            return "a value";
        }
    }

    record Items(List<Node> items, int line, int column) implements Node {
        @Override public String what() {
            return "a list";
        }
    }

    record Keys(Map<String, Node> values, Map<String, Word> keys, int line, int column) implements Node {
        @Override public String what() {
            return "keys with values";
        }
    }

    /** @throws RecipeException with the place where it stops being YAML that such a file may use */
    static Node read(String path, String text, Kind kind) throws RecipeException {
        try (YAMLParser parser = new YAMLFactory().createParser(text)) {
            Reader reader = new Reader(path, parser, kind);
            if (parser.nextToken() == null) throw new RecipeException(path, 1, 1, "the file is empty; begin with " + kind.key + ": " + kind.version);
            Node node = reader.node(0);
            if (parser.nextToken() != null) throw reader.here("a second document begins here; one file is " + kind.name);
            return node;
        } catch (JsonProcessingException e) {
            Matcher problem = PROBLEM.matcher(e.getOriginalMessage());
            String what = null;
            int line = 1, column = 1;
            while (problem.find()) {                // the last one: those before it tell what it was reading
                what = problem.group(1);
                line = Integer.parseInt(problem.group(2));
                column = Integer.parseInt(problem.group(3));
            }
            if (what != null) throw new RecipeException(path, line, column, "this is not YAML: " + firstLine(what)
                    + "; indent with blanks, and put a text that holds : or # in quotes");
            JsonLocation at = e.getLocation();
            throw new RecipeException(path, at == null ? 1 : Math.max(1, at.getLineNr()), at == null ? 1 : Math.max(1, at.getColumnNr()),
                    "this is not YAML: " + firstLine(e.getOriginalMessage()));
        } catch (IOException | RuntimeException e) {
            // The scanner below the parser reports some faults as unchecked exceptions of its own, without a place we can ask for.
            throw new RecipeException(path, 1, 1, "this is not YAML: " + firstLine(String.valueOf(e.getMessage())));
        }
    }

    private static String firstLine(String message) {
        String line = message.strip().split("\\R", 2)[0];
        return line.length() > 150 ? line.substring(0, 150) + "..." : line;
    }

    /** One pass over the parser's tokens. */
    final class Reader {
        private final String path;
        private final YAMLParser parser;
        private final Kind kind;
        private int words;

        Reader(String path, YAMLParser parser, Kind kind) {
            this.path = path;
            this.parser = parser;
            this.kind = kind;
        }

        Node node(int depth) throws IOException, RecipeException {
            refuseTricks();
            if (depth > DEEPEST) throw here("this is nested deeper than " + kind.name + " ever is");
            if (++words > kind.longest) throw here("this is longer than " + kind.name + " ever is");
            int line = line(), column = column();
            JsonToken token = parser.currentToken();
            if (token == JsonToken.START_OBJECT) return keys(depth, line, column);
            if (token == JsonToken.START_ARRAY) {
                List<Node> items = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) items.add(node(depth + 1));
                return new Items(List.copyOf(items), line, column);
            }
            return new Word(token == JsonToken.VALUE_NULL ? "" : parser.getText(), line, column);
        }

        private Node keys(int depth, int line, int column) throws IOException, RecipeException {
            Map<String, Node> values = new LinkedHashMap<>();
            Map<String, Word> places = new LinkedHashMap<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                refuseTricks();
                String key = parser.currentName();
                Word before = places.put(key, new Word(key, line(), column()));
                if (before != null) throw here(Spelling.quoted(key) + " stands here twice; the first is in line " + before.line());
                parser.nextToken();
                values.put(key, node(depth + 1));
            }
            return new Keys(values, places, line, column);
        }

        private void refuseTricks() throws IOException, RecipeException {
            if (parser.isCurrentAlias() || parser.getObjectId() != null)
                throw here("anchors and aliases (& and *) are not used in " + kind.name + "; write the value out");
            if (parser.getTypeId() != null) throw here("tags (!) are not used in " + kind.name + "; write the plain value");
        }

        RecipeException here(String text) {
            return new RecipeException(path, line(), column(), text);
        }

        private int line() {
            return Math.max(1, parser.currentTokenLocation().getLineNr());
        }

        private int column() {
            return Math.max(1, parser.currentTokenLocation().getColumnNr());
        }
    }
}
