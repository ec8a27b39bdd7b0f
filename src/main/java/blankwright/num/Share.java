package blankwright.num;

/** A part of a longer work: its 0..1 becomes from..to of the whole. */
public record Share(Progress whole, double from, double to) implements Progress {
    @Override
    public void at(String what, double fraction) {
        whole.at(what, from + Math.max(0, Math.min(1, fraction)) * (to - from));
    }

    @Override
    public boolean cancelled() {
        return whole.cancelled();
    }
}
