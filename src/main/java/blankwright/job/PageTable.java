package blankwright.job;

/** A table of a page: rows under a head, in lines between bars. */
final class PageTable {
    private final int columns;
    private final StringBuilder lines = new StringBuilder();
    private int rows;
    private int left;

    PageTable(String... head) {
        columns = head.length;
        line(head);
        lines.append('\n').append("|---".repeat(columns)).append('|');
    }

    void row(String... cells) {
        if (cells.length != columns) throw new IllegalArgumentException(cells.length + " cells under " + columns + " heads");
        lines.append('\n');
        line(cells);
        rows++;
    }

    private void line(String[] cells) {
        lines.append("| ").append(String.join(" | ", cells)).append(" |");
    }

    /** One more there was no room for. */
    void leaveOut() {
        left++;
    }

    int left() {
        return left;
    }

    int size() {
        return rows;
    }

    boolean isEmpty() {
        return rows == 0;
    }

    @Override
    public String toString() {
        return lines.toString();
    }
}
