package blankwright.project;

import blankwright.num.Explained;
import blankwright.num.Sentence;
import blankwright.num.Spelling;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** What the readers of our YAML files share: asks a {@link Node} for what belongs there and refuses the rest with its place. */
abstract class Fields {
    private static final int MOST_BYTES = 1 << 20;

    /** What messages call the file. */
    final String path;

    Fields(String path) {
        this.path = path;
    }

    /** The text of a file in UTF-8, at most 1 MB. */
    static String text(Path file, Node.Kind kind) throws IOException, RecipeException {
        byte[] bytes;
        try (var in = Files.newInputStream(file)) {
            bytes = in.readNBytes(MOST_BYTES + 1);
        }
        if (bytes.length > MOST_BYTES) throw new RecipeException(file.toString(), 1, 1, "this is longer than " + kind.called() + " ever is (1 MB)");
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new RecipeException(file.toString(), 1, 1, "this is not a text in UTF-8; save it again as UTF-8");
        }
    }

    /** The first key of a file, which says what it is and in which version. */
    final void version(Node.Keys top, Node.Kind kind) throws RecipeException {
        if (!top.values().containsKey(kind.key()))
            throw at(top, kind.key() + " is missing; begin with " + kind.key() + ": " + kind.version());
        Node.Word version = word(top.values().get(kind.key()), kind.key());
        if (!version.text().matches("\\d{1,9}") || Integer.parseInt(version.text()) < 1)
            throw at(version, kind.key() + ": " + Spelling.quoted(version.text()) + " is no version; write " + kind.version());
        if (Integer.parseInt(version.text()) > kind.version())
            throw at(version, "this is " + kind.called() + " of version " + version.text() + " and this program knows versions up to " + kind.version()
                    + "; take a newer program");
    }

    final Node needed(Node.Keys keys, String key) throws RecipeException {
        Node node = keys.values().get(key);
        if (node == null) throw at(keys, key + " is missing");
        return node;
    }

    final Node.Word word(Node node, String key) throws RecipeException {
        if (node instanceof Node.Word word) return word;
        throw at(node, key + ": one value belongs here, not " + node.what());
    }

    final Node.Keys keys(Node node, String what) throws RecipeException {
        if (node instanceof Node.Keys keys) return keys;
        throw at(node, what + ": keys with values belong here, not " + node.what());
    }

    /** A plain number, as in 1 or -0.5. */
    final double number(Node.Word word, String key) throws RecipeException {
        if (!word.text().matches("[+-]?(\\d{1,9}(\\.\\d{0,400})?|\\.\\d{1,400})"))
            throw at(word, key + " " + Spelling.quoted(word.text()) + ": a plain number belongs here, as in 0.5");
        return Double.parseDouble(word.text());
    }

    /** @param hint how the list is written, e.g. {@code one hole to a line beginning with -} */
    final List<Node> items(Node node, String key, String hint) throws RecipeException {
        if (node instanceof Node.Items list) return list.items();
        throw at(node, key + ": a list belongs here, " + hint);
    }

    final void onlyKnown(Node.Keys keys, Collection<String> known, String under) throws RecipeException {
        for (Map.Entry<String, Node.Word> e : keys.keys().entrySet()) {
            if (!known.contains(e.getKey()))
                throw at(e.getValue(), "the key " + Spelling.quoted(e.getKey()) + " is not known" + (under.isEmpty() ? "" : " under " + under)
                        + Spelling.nearest(e.getKey(), known));
        }
    }

    final RecipeException at(Node node, String text) {
        return at(node, Sentence.of(text));
    }

    final RecipeException at(Node node, Sentence text) {
        return new RecipeException(path, node.line(), node.column(), text);
    }

    /** @param before what is said before what went wrong */
    final RecipeException at(Node node, String before, Throwable e) {
        return at(node, Sentence.say("%s%s", before, Explained.words(e)));
    }
}
