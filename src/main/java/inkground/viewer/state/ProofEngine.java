package inkground.viewer.state;

import inkground.app.Arrangement;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.OwnSubstrates;
import inkground.app.PageComparison;
import inkground.app.Session;
import inkground.appearance.PrintedPixels;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.garment.Form;
import inkground.garment.Placement;
import inkground.geometry.Box;
import inkground.handoff.CleanFile;
import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Cut;
import inkground.substrate.PrintProcess;
import inkground.substrate.Texture;
import inkground.viewer.desk.JobEngine;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All that the window asks of the rest of the program. Every method may take long and is called off the window's thread
 * unless it says otherwise; {@link JobEngine} answers with the use cases of the program, tests with slow or failing ones.
 */
public interface ProofEngine {
    /** @return papers first, then garments, each in the order of the rack */
    List<SubstrateCard> substrates() throws Refusal;

    /** @return shapes of garments, in order */
    List<Cut> cuts() throws Refusal;

    /** @return the user's own papers and garments; quick */
    OwnShelf own();

    /** The user's own papers and garments. Each change is kept at once; {@link #substrates} tells of it. */
    interface OwnShelf {
        /** Keeps a new one. */
        SubstrateCard add(OwnSubstrates.Draft draft) throws Refusal;

        /** Keeps one in place of another; its id may be another afterwards. */
        SubstrateCard replace(String id, OwnSubstrates.Draft draft) throws Refusal;

        /** Removes one. */
        void remove(String id) throws Refusal;

        /** @return its file; quick */
        Path file(String id);

        /** @return one line for each file of theirs that could not be read last time; quick */
        List<String> faults();
    }

    /** @return ways of printing, in the order of their lists */
    List<PrintProcess> processes() throws Refusal;

    /** @return the demo artwork, where it can be found; quick */
    Optional<Path> demo();

    /**
     * The session kept beside an artwork.
     *
     * @return empty where there is none
     * @throws Refusal if there is one that cannot be used
     */
    Optional<Session> session(Path artwork) throws Refusal;

    /**
     * Keeps a session beside an artwork, in place of an earlier one.
     *
     * @return the file it is in
     */
    Path keep(Session session, Path artwork) throws Refusal;

    /**
     * Opens a file.
     *
     * @param size chosen for a picture or an SVG
     * @throws Refusal if it cannot be used, or not in this size
     */
    OpenFile open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal;

    /** Opens a file in the size that it states, or the usual one. */
    default OpenFile open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, PictureSize.STATED, cancel, progress);
    }

    /**
     * Opens what the open page is compared with: another revision of its file, or an approval record.
     *
     * @param size that the user has chosen for the open artwork: a revision that can be given one is as large
     * @param number page of a revision, from 1; its last one where it has fewer. A record is of one page
     * @throws Refusal if it cannot be used, or was changed since it was approved
     */
    Earlier earlier(Path file, PictureSize size, int number, Cancel cancel, Progress progress) throws Refusal;

    /**
     * What a page is compared with.
     *
     * @param approved how it was approved; empty for a revision, which is shown as the open page is
     */
    record Earlier(OpenFile file, OpenPage page, Optional<ApprovedAs> approved) {}

    /**
     * How a page was approved. Its inks, their order and the underbase are the page's own, whatever look it is painted with.
     *
     * @param caption when and by whom
     * @param on what it was approved on; the rack may have it no longer, or in another colour
     * @param overprint whether overprint was honoured
     * @param layersOn ids of the layers that were on
     */
    record ApprovedAs(String caption, SubstrateCard on, boolean overprint, Set<Integer> layersOn) {
        /** Copies the set. */
        public ApprovedAs {
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * Reads the colour rules of another job.
     *
     * @param file an artwork with a session or an assignment beside it, or that file itself
     * @throws Refusal if there is none, or it cannot be used
     */
    ColourAssignment rules(Path file) throws Refusal;

    /** An opened file; close it when another takes its place. */
    interface OpenFile extends AutoCloseable {
        /** @return the file; quick */
        Path path();

        /** @return number of pages, at least 1; quick */
        int pageCount();

        /** @return the size that it was opened in; quick */
        PictureSize size();

        /** @return how large a page is by itself, from 1; empty for a kind of file that always has its own size. Quick */
        Optional<Sizing> sizing(int page);

        /**
         * Reads one page.
         *
         * @param number from 1
         * @param assignment which of its colours are printed otherwise than stated
         */
        OpenPage page(int number, ColourAssignment assignment, Cancel cancel, Progress progress) throws Refusal;

        /**
         * Looks at one page from afar. Nothing of the page is kept but what the small picture needs.
         *
         * @param number from 1
         * @param assignment which of its colours are printed otherwise than stated
         * @param edgePx longer edge of the picture in pixels
         */
        PageThumb thumb(int number, ColourAssignment assignment, int edgePx, Cancel cancel) throws Refusal;

        /**
         * Writes the file without its bare colours, whole or not at all.
         *
         * @param assignment says which colours are bare
         * @throws Refusal in plain words, if it cannot be done truly
         */
        CleanFile.Result clean(
                ColourAssignment assignment, Path target, boolean replace, Cancel cancel, Progress progress)
                throws Refusal;

        /** Writes an approval record, whole or not at all. */
        void approve(ApproveRequest request, Cancel cancel, Progress progress) throws Refusal;

        @Override
        void close();
    }

    /** One page seen from afar: its planes, coarse, and how to colour them. Light enough to keep many. */
    interface PageThumb {
        /** @return the planes of its media box */
        InkPlanes planes();

        /** @return what colours them on a substrate as the user has arranged the job, all printing inks shown; thread-safe */
        Painter painter(String substrateId, Arrangement arrangement);
    }

    /** One page, read. The getters are quick. */
    interface OpenPage {
        /** @return geometry */
        PageInfo info();

        /** @return optional content */
        List<Layer> layers();

        /** @return inks in plane order */
        List<InkCard> inks();

        /** @return plane indices in the usual print order, first printed first */
        List<Integer> printOrder();

        /** @return what is not shown exactly and the like, one line each */
        List<String> notes();

        /** Rasterises a region into ink planes. */
        InkPlanes render(PlateRequest request, Cancel cancel, Progress progress) throws Refusal;

        /** @return what turns planes into a picture for one look; thread-safe */
        Painter painter(Look look);

        /** @return how bare a pixel is; quick, called on the window's thread */
        String cover(InkPlanes planes, int x, int y);

        /** @return the colour that a tint vector asks for, absolute; null for no ink at all. Quick enough for the pointer */
        Lab asked(int[] tints);

        /**
         * Measures the trim of the page: area of each ink.
         *
         * @param overprint whether overprint is honoured
         * @param layersOn ids of the layers that are on
         */
        Figures measure(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) throws Refusal;

        /** @return box around all ink that prints within the trim, in points; empty where there is none */
        Optional<Box> inkedBox(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress)
                throws Refusal;

        /**
         * Gathers the edges that the artwork means to be seen.
         *
         * @param overprint whether overprint is honoured
         * @param layersOn ids of the layers that are on
         */
        Edges edges(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) throws Refusal;

        /** Writes a contact sheet, whole or not at all. */
        void writeSheet(SheetRequest request, Cancel cancel, Progress progress) throws Refusal;

        /** Takes stock of the colours that the page paints, whatever they are printed as. */
        ColourInventory colours(Cancel cancel, Progress progress) throws Refusal;

        /**
         * @param garment colour of the chosen garment; null on paper
         * @return what may be the garment painted in for preview, the likeliest first
         */
        List<Candidate> grounds(ColourInventory colours, Lab garment);

        /** Tells what deleting the objects of bare colours would do, instead of knocking them out. */
        Deletion deletion(ColourAssignment nominated, Cancel cancel, Progress progress) throws Refusal;

        /**
         * Proposes an ink for every flat colour that has none.
         *
         * @param substrateId what it is printed on
         */
        ColourAssignment proposal(ColourInventory colours, String substrateId, Cancel cancel, Progress progress)
                throws Refusal;

        /** @return the flat colour that is seen at a place of the page, in points, with these layers on */
        Optional<ColourUse> colourAt(
                ColourInventory colours, double xPt, double yPt, Set<Integer> layersOn, Cancel cancel) throws Refusal;
        /**
         * Measures the map of a look over the trim of the page.
         *
         * @param look one with a map
         */
        MapReport measureMap(Look look, boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress)
                throws Refusal;

        /** Compares this page with an earlier revision of it, or with what was approved. */
        PageComparison compare(CompareRequest request, Cancel cancel, Progress progress) throws Refusal;

        /** Writes a proof, whole or not at all. */
        void export(ExportRequest request, Cancel cancel, Progress progress) throws Refusal;
    }

    /** The edges of a page; thread-safe. */
    interface Edges {
        /** @return what becomes of them under a look; takes milliseconds */
        Vanish on(Look look);
    }

    /**
     * How much of the artwork's edges loses its contrast.
     *
     * @param share by length, 0 none to 1 all
     * @param lostMm length lost, in mm
     * @param edgesMm length of all that are meant to be seen, in mm
     */
    record Vanish(double share, double lostMm, double edgesMm) {}

    /** Turns planes into opaque sRGB. */
    interface Painter {
        /**
         * Paints all pixels of the planes.
         *
         * @param argb receives 0xffRRGGBB
         * @param offset of the first pixel
         * @param stride pixels from row to row
         */
        void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) throws Refusal;

        /**
         * Finds out what serves to paint the planes sooner on other papers.
         *
         * @return empty where nothing helps
         */
        default Optional<PrintedPixels> printed(InkPlanes planes, Cancel cancel) {
            return Optional.empty();
        }

        /** Paints all pixels of the planes, sooner by what is known of them. */
        default void paint(InkPlanes planes, PrintedPixels known, int[] argb, int offset, int stride, Cancel cancel)
                throws Refusal {
            paint(planes, argb, offset, stride, cancel);
        }

        /** @return colour of one tint vector (0 to 255 each, plane order) on the substrate, 0xffRRGGBB */
        int colour(int[] tints);

        /** @return surface of the substrate; quick */
        Texture texture();

        /** @return the same as Lab; quick enough for the pointer */
        Lab lab(int[] tints);
    }

    /**
     * One paper or garment as the rack shows it.
     *
     * @param id its name in files and on the command line
     * @param name for the user
     * @param garment whether it is cloth; else paper
     * @param lab its colour
     * @param argb its colour on the screen, 0xffRRGGBB
     * @param texture jersey, woven, heather, uncoated, coated or another word
     * @param source where its colour comes from
     * @param cautions what to mind when printing on it
     * @param own whether the user has made it
     */
    record SubstrateCard(
            String id,
            String name,
            boolean garment,
            Lab lab,
            int argb,
            String texture,
            String source,
            List<String> cautions,
            boolean own) {
        /** Copies the list. */
        public SubstrateCard {
            cautions = List.copyOf(cautions);
        }

        /** One that comes with the program. */
        public SubstrateCard(
                String id,
                String name,
                boolean garment,
                Lab lab,
                int argb,
                String texture,
                String source,
                List<String> cautions) {
            this(id, name, garment, lab, argb, texture, source, cautions, false);
        }
    }

    /**
     * One ink as the stack shows it.
     *
     * @param ink name and kind
     * @param source where its colour comes from
     * @param opacity 0 a pure filter, 1 hides what lies under it
     */
    record InkCard(Ink ink, String source, double opacity) {}

    /**
     * Measures of one page over its trim box.
     *
     * @param inks in plane order
     */
    record Figures(List<InkFigure> inks) {
        /** Copies the list. */
        public Figures {
            inks = List.copyOf(inks);
        }
    }

    /**
     * Measures of one ink.
     *
     * @param coveredCm2 area where any of it lies
     * @param meanTint 0 to 1, over the whole trim
     */
    record InkFigure(double coveredCm2, double meanTint) {}

    /**
     * A map measured over the trim.
     *
     * @param title what it shows
     * @param entries its legend
     * @param largest the largest value met, with its unit; empty for a map that measures none
     * @param places where to look, the worst first; empty for a map that names none
     */
    record MapReport(String title, List<MapEntry> entries, String largest, List<MapPlace> places) {
        /** Copies the lists. */
        public MapReport {
            entries = List.copyOf(entries);
            places = List.copyOf(places);
        }
    }

    /**
     * A place that a map found.
     *
     * @param words what is there
     * @param box where, in points of the page
     */
    record MapPlace(String words, Box box) {}

    /**
     * One line of a map's legend.
     *
     * @param word a word or two
     * @param explanation one sentence
     * @param cm2 area
     * @param share of the trim, 0 to 1
     * @param sample {@link #SAMPLE_PX} squared pixels, 0xffRRGGBB
     */
    record MapEntry(String word, String explanation, double cm2, double share, int[] sample) {
        /** Edge of the sample in pixels. */
        public static final int SAMPLE_PX = 32;
    }

    /**
     * How a proof shows the artwork on a garment.
     *
     * @param cloth whether grain and folds are shown
     */
    record WornAs(Placement placement, Form form, boolean cloth) {}

    /**
     * What to compare a page with.
     *
     * @param before an earlier page, of the same engine
     * @param look of the page; an earlier revision is looked at in the same way, one that was approved as it was approved
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param placement where the artwork lies on a garment
     * @param limitDe00 largest difference that is let pass
     */
    record CompareRequest(
            OpenPage before,
            Look look,
            boolean overprint,
            Set<Integer> layersOn,
            Placement placement,
            double limitDe00) {
        /** Copies the set. */
        public CompareRequest {
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * An approval record to write.
     *
     * @param page which page, from 1
     * @param substrateId what it lies on
     * @param arrangement how it is printed
     * @param hiddenInks names of inks that are not shown
     * @param printing way of printing in words; empty where none is chosen
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param worn where it is worn; empty for the page alone
     * @param by who approved; empty for no one named
     * @param target file of the record
     * @param replace whether an existing file may be replaced
     */
    record ApproveRequest(
            int page,
            String substrateId,
            Arrangement arrangement,
            Set<String> hiddenInks,
            Optional<String> printing,
            boolean overprint,
            Set<Integer> layersOn,
            Optional<WornAs> worn,
            Optional<String> by,
            Path target,
            boolean replace) {
        /** Copies the sets. */
        public ApproveRequest {
            hiddenInks = Set.copyOf(hiddenInks);
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * A contact sheet to write.
     *
     * @param looks on what, which inks; 2 to 24, in order
     * @param ranked whether they are in order of their vanish score
     * @param name of the artwork, for the head line
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param picturePx pixels on the longer side of each picture
     * @param target PNG file
     * @param replace whether an existing file may be replaced
     */
    record SheetRequest(
            List<Look> looks,
            boolean ranked,
            String name,
            boolean overprint,
            Set<Integer> layersOn,
            int picturePx,
            Path target,
            boolean replace) {
        /** Copies the collections. */
        public SheetRequest {
            looks = List.copyOf(looks);
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * A proof to write.
     *
     * @param look on what, which inks
     * @param box which part of the page
     * @param dpi pixels per inch
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param target PNG file
     * @param replace whether an existing file may be replaced
     * @param worn where it is worn; empty for the page alone
     */
    record ExportRequest(
            Look look,
            PageBox box,
            double dpi,
            boolean overprint,
            Set<Integer> layersOn,
            Path target,
            boolean replace,
            Optional<WornAs> worn) {
        /** Checks the resolution and copies the set. */
        public ExportRequest {
            if (!(dpi > 0)) {
                throw new IllegalArgumentException("dpi " + dpi);
            }
            layersOn = Set.copyOf(layersOn);
        }
    }
}
