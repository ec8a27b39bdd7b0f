package blankwright.job;

import blankwright.num.Progress;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.CancellationException;

/** Bytes on their way into a file, as long as the file is wanted: then the writer, whichever it is, ends at its next few bytes. */
final class WantedStream extends FilterOutputStream {
    private static final int OFTEN = 1 << 14;   // bytes between two questions

    private final Progress progress;
    private int left;

    WantedStream(OutputStream out, Progress progress) {
        super(out);
        this.progress = progress;
    }

    @Override
    public void write(int b) throws IOException {
        ask(1);
        out.write(b);
    }

    @Override
    public void write(byte[] b, int from, int length) throws IOException {
        ask(length);
        out.write(b, from, length);
    }

    private void ask(int bytes) {
        left -= bytes;
        if (left > 0) return;
        left = OFTEN;
        if (progress.cancelled()) throw new CancellationException("no longer wanted");
    }
}
