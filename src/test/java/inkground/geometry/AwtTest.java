package inkground.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import org.junit.jupiter.api.Test;

/** Shapes of the JDK become ours and back; raised curves are worked out by hand: (from + 2 · control) / 3. */
class AwtTest {
    @Test
    void aQuadraticCurveBecomesTheSameCurveAsACubic() {
        Path2D path = new Path2D.Double();
        path.moveTo(3, 6);
        path.quadTo(9, 12, 15, 0);
        assertThat(Awt.outline(path, Matrix.IDENTITY))
                .isEqualTo(new Outline.Builder()
                        .move(3, 6)
                        .curve(7, 10, 11, 8, 15, 0)
                        .build());
    }

    @Test
    void aCurveRightAfterACloseStartsWhereTheSubPathDid() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, 0);
        path.lineTo(30, 0);
        path.lineTo(30, 30);
        path.closePath();
        path.quadTo(3, 6, 9, 9);
        assertThat(Awt.outline(path, Matrix.IDENTITY))
                .isEqualTo(new Outline.Builder()
                        .move(0, 0)
                        .line(30, 0)
                        .line(30, 30)
                        .close()
                        .curve(2, 4, 5, 7, 9, 9)
                        .build());
    }

    @Test
    void thereAndBackIsTheSamePathUnderTheMap() {
        Outline outline = new Outline.Builder()
                .move(1, 2)
                .line(3, 4)
                .curve(5, 6, 7, 8, 9, 10)
                .close()
                .build();
        Path2D path = Awt.path(outline, FillRule.EVEN_ODD);
        assertThat(Awt.rule(path)).isEqualTo(FillRule.EVEN_ODD);
        assertThat(Awt.rule(Awt.path(outline, FillRule.NON_ZERO))).isEqualTo(FillRule.NON_ZERO);
        Matrix m = new Matrix(2, 1, -1, 3, 5, 7);
        assertThat(Awt.outline(path, m)).isEqualTo(outline.transform(m));
    }

    @Test
    void mapsAndPensKeepTheirMeaning() {
        AffineTransform t = new AffineTransform(1, 2, 3, 4, 5, 6);
        assertThat(Awt.matrix(t)).isEqualTo(new Matrix(1, 2, 3, 4, 5, 6));
        assertThat(Awt.transform(Awt.matrix(t))).isEqualTo(t);
        assertThat(Awt.cap(Pen.Cap.BUTT)).isEqualTo(BasicStroke.CAP_BUTT);
        assertThat(Awt.cap(Pen.Cap.ROUND)).isEqualTo(BasicStroke.CAP_ROUND);
        assertThat(Awt.cap(Pen.Cap.SQUARE)).isEqualTo(BasicStroke.CAP_SQUARE);
        assertThat(Awt.join(Pen.Join.MITER)).isEqualTo(BasicStroke.JOIN_MITER);
        assertThat(Awt.join(Pen.Join.ROUND)).isEqualTo(BasicStroke.JOIN_ROUND);
        assertThat(Awt.join(Pen.Join.BEVEL)).isEqualTo(BasicStroke.JOIN_BEVEL);
    }
}
