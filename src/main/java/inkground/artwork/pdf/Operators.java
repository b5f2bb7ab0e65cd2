package inkground.artwork.pdf;

import inkground.colour.BlackPointCompensation;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.MissingOperandException;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorProcessor;
import org.apache.pdfbox.contentstream.operator.state.SetGraphicsStateParameters;
import org.apache.pdfbox.contentstream.operator.state.SetLineDashPattern;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSNumber;

/** The operators whose handling in the library is not enough for us. */
final class Operators {
    private Operators() {}

    static void register(PageRecorder recorder) {
        recorder.addOperator(
                new Simple("Do", recorder, (op, in) -> recorder.drawObject(ColourOperators.nameIn(op, in))));
        recorder.addOperator(new Simple(
                "BI", recorder, (op, in) -> recorder.drawInline(op.getImageParameters(), op.getImageData())));
        recorder.addOperator(new Simple("BMC", recorder, (op, in) -> recorder.beginMarked(null, null)));
        recorder.addOperator(new Simple(
                "BDC",
                recorder,
                (op, in) -> recorder.beginMarked(in.isEmpty() ? null : in.get(0), in.size() < 2 ? null : in.get(1))));
        recorder.addOperator(new Simple("EMC", recorder, (op, in) -> recorder.endMarked()));
        recorder.addOperator(new State(recorder));
        recorder.addOperator(new Dash(recorder));
    }

    /** What an operator does. */
    interface Action {
        void run(Operator op, List<COSBase> operands) throws IOException;
    }

    /** An operator of one action. */
    static final class Simple extends OperatorProcessor {
        private final String name;
        private final Action action;

        Simple(String name, PageRecorder recorder, Action action) {
            super(recorder);
            this.name = name;
            this.action = action;
        }

        @Override
        public void process(Operator op, List<COSBase> operands) throws IOException {
            action.run(op, operands);
        }

        @Override
        public String getName() {
            return name;
        }
    }

    /** gs, with op following OP where only OP is given: ISO 32000-2 table 57. */
    private static final class State extends SetGraphicsStateParameters {
        private final PageRecorder recorder;

        State(PageRecorder recorder) {
            super(recorder);
            this.recorder = recorder;
        }

        @Override
        public void process(Operator op, List<COSBase> operands) throws IOException {
            super.process(op, operands);
            COSDictionary states = Cos.dictionary(recorder.resources(), "ExtGState");
            COSDictionary dict =
                    Cos.dictionary(states, ColourOperators.nameIn(op, operands).getName());
            if (dict != null && dict.containsKey("OP") && !dict.containsKey("op")) {
                recorder.getGraphicsState().setNonStrokingOverprint(Cos.flag(dict, "OP"));
            }
            transfer(dict);
            blackPoint(Cos.nameOf(dict, "UseBlackPtComp"));
            double[] dash = dict == null ? null : Cos.numbers(Cos.get(dict, "D"));
            if (dash != null && Cos.array(dict, "D").size() > 1) {
                recorder.dashPhase(dash[1]);
            }
        }

        /** Unknown names count as Default. */
        private void blackPoint(String stated) {
            if (stated != null) {
                recorder.blackPoint(
                        switch (stated) {
                            case "ON" -> BlackPointCompensation.ON;
                            case "OFF" -> BlackPointCompensation.OFF;
                            default -> BlackPointCompensation.DEFAULT;
                        });
            }
        }

        /** TR2 goes before TR. */
        private void transfer(COSDictionary dict) {
            COSBase stated = Cos.get(dict, dict != null && dict.containsKey("TR2") ? "TR2" : "TR");
            if (stated != null) {
                recorder.getGraphicsState().setTransfer(stated);
                if (Transfers.changes(stated)) {
                    recorder.inexact("a transfer function", "applied; a printer may be set to leave it out");
                }
            }
        }
    }

    /** d, keeping the fraction of the phase. */
    private static final class Dash extends SetLineDashPattern {
        private final PageRecorder recorder;

        Dash(PageRecorder recorder) {
            super(recorder);
            this.recorder = recorder;
        }

        @Override
        public void process(Operator op, List<COSBase> operands) throws MissingOperandException {
            super.process(op, operands);
            if (operands.size() > 1 && operands.get(1) instanceof COSNumber phase) {
                recorder.dashPhase(phase.floatValue());
            }
        }
    }
}
