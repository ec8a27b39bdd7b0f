package blankwright.drawing;

import blankwright.num.Progress;
import java.awt.print.PageFormat;
import java.awt.print.Pageable;
import java.awt.print.Printable;
import java.awt.print.PrinterAbortException;
import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import javax.print.DocFlavor;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;
import javax.print.attribute.HashPrintRequestAttributeSet;
import javax.print.attribute.PrintRequestAttributeSet;
import javax.print.attribute.standard.JobName;
import javax.print.attribute.standard.MediaSizeName;
import javax.print.attribute.standard.Sides;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.printing.PDFPageable;

/** A printer of this computer. It gets the pages of a PDF as large as they are: nothing is fitted to the paper. */
public final class PdfPrinter {
    private final PrintService service;

    private PdfPrinter(PrintService service) {
        this.service = service;
    }

    public static PdfPrinter of(PrintService service) {
        return new PdfPrinter(service);
    }

    /** Those set up in the system, the usual one first. Asking the system can take seconds. */
    public static List<PdfPrinter> all() {
        List<PdfPrinter> printers = new ArrayList<>();
        PrintService usual = PrintServiceLookup.lookupDefaultPrintService();
        for (PrintService service : PrintServiceLookup.lookupPrintServices(DocFlavor.SERVICE_FORMATTED.PAGEABLE, null))
            printers.add(service.equals(usual) ? 0 : printers.size(), new PdfPrinter(service));
        return printers;
    }

    /** As the system calls it. */
    public String name() {
        return service.getName();
    }

    /**
     * Prints on one side of the paper, and returns once the printer's queue has it all.
     *
     * @param title of the job in the queue
     * @param most pages, from the first one
     * @return how many pages were sent
     * @throws IOException where the printer does not take it, with the reason
     * @throws CancellationException once the progress says it is no longer wanted
     */
    public int print(byte[] pdf, String title, Paper paper, int most, Progress progress) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Sheets sheets = new Sheets(new PDFPageable(document), most, progress);
            PrintRequestAttributeSet wishes = new HashPrintRequestAttributeSet();
            wishes.add(new JobName(title, null));
            wishes.add(paper == Paper.A4 ? MediaSizeName.ISO_A4 : MediaSizeName.NA_LETTER);
            wishes.add(Sides.ONE_SIDED);
            PrinterJob job = PrinterJob.getPrinterJob();
            job.setPrintService(service);
            job.setJobName(title);
            job.setPageable(sheets);
            job.print(wishes);
            return sheets.getNumberOfPages();
        } catch (PrinterAbortException e) {
            throw new CancellationException();
        } catch (PrinterException e) {
            throw new IOException(e.getMessage() == null ? "the printer gives no reason" : e.getMessage(), e);
        }
    }

    /** The first pages; looks before each whether it is still wanted. */
    private record Sheets(Pageable all, int most, Progress progress) implements Pageable {
        @Override
        public int getNumberOfPages() {
            return Math.min(most, all.getNumberOfPages());
        }

        @Override
        public PageFormat getPageFormat(int page) {
            return all.getPageFormat(page);
        }

        @Override
        public Printable getPrintable(int page) {
            return (graphics, format, index) -> {
                if (progress.cancelled()) throw new PrinterAbortException();
                progress.at("printing page " + (index + 1) + " of " + getNumberOfPages(), (double) index / getNumberOfPages());
                return all.getPrintable(page).print(graphics, format, index);
            };
        }
    }
}
