package rungwise.sheets;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** The straight lines and filled shapes of a page, in millimetres from its lower left corner. */
final class DrawnShapes extends PDFGraphicsStreamEngine {

  private static final double POINTS_IN_MILLIMETRE = 72 / 25.4;

  /** A stroke from one point to another. */
  record Line(double x1, double y1, double x2, double y2) {
    boolean isUpright() {
      return Math.abs(x1 - x2) < 0.01 && Math.abs(y1 - y2) > 0.5;
    }

    double middle() {
      return (y1 + y2) / 2;
    }
  }

  private final List<Line> lines = new ArrayList<>();
  private final List<Rectangle2D> filled = new ArrayList<>();
  private final List<Line> path = new ArrayList<>();
  private final List<Point2D> points = new ArrayList<>();
  private Point2D at = new Point2D.Double();

  private DrawnShapes(PDPage page) {
    super(page);
  }

  static DrawnShapes of(PDPage page) throws IOException {
    var shapes = new DrawnShapes(page);
    shapes.processPage(page);
    return shapes;
  }

  List<Line> upright() {
    return lines.stream().filter(Line::isUpright).toList();
  }

  List<Rectangle2D> filled() {
    return List.copyOf(filled);
  }

  private static double millimetres(double points) {
    return points / POINTS_IN_MILLIMETRE;
  }

  private void add(Point2D to) {
    path.add(
        new Line(
            millimetres(at.getX()),
            millimetres(at.getY()),
            millimetres(to.getX()),
            millimetres(to.getY())));
    points.add(to);
    at = to;
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    moveTo((float) p0.getX(), (float) p0.getY());
    List.of(p1, p2, p3, p0).forEach(this::add);
  }

  @Override
  public void moveTo(float x, float y) {
    at = new Point2D.Double(x, y);
    points.add(at);
  }

  @Override
  public void lineTo(float x, float y) {
    add(new Point2D.Double(x, y));
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    at = new Point2D.Double(x3, y3);
    points.add(at);
  }

  @Override
  public Point2D getCurrentPoint() {
    return at;
  }

  @Override
  public void closePath() {
    // The first point is in the path already.
  }

  @Override
  public void endPath() {
    path.clear();
    points.clear();
  }

  @Override
  public void strokePath() {
    lines.addAll(path);
    endPath();
  }

  @Override
  public void fillPath(int windingRule) {
    if (!points.isEmpty()) {
      double left = points.stream().mapToDouble(Point2D::getX).min().orElseThrow();
      double right = points.stream().mapToDouble(Point2D::getX).max().orElseThrow();
      double low = points.stream().mapToDouble(Point2D::getY).min().orElseThrow();
      double high = points.stream().mapToDouble(Point2D::getY).max().orElseThrow();
      filled.add(
          new Rectangle2D.Double(
              millimetres(left),
              millimetres(low),
              millimetres(right - left),
              millimetres(high - low)));
    }
    endPath();
  }

  @Override
  public void fillAndStrokePath(int windingRule) {
    List<Line> stroked = List.copyOf(path);
    fillPath(windingRule);
    lines.addAll(stroked);
  }

  @Override
  public void clip(int windingRule) {
    // Nothing here is measured by what is cut off.
  }

  @Override
  public void drawImage(PDImage image) {
    throw new IllegalStateException("a picture of dots on a sheet");
  }

  @Override
  public void shadingFill(COSName name) {
    throw new IllegalStateException("a shading on a sheet");
  }
}
