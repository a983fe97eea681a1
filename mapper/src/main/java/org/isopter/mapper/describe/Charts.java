package org.isopter.mapper.describe;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Rectangle;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.isopter.model.value.Site;
import org.isopter.model.value.Unit;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.data.category.DefaultCategoryDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Draws numbers and answers as pictures that stand in one page (SVG). */
final class Charts {

  private static final int WIDTH = 420;
  private static final int HEIGHT = 220;
  private static final int BAR = 26;
  private static final Font SMALL = new Font(Font.SANS_SERIF, Font.PLAIN, 11);

  /** Blue, orange and grey, which also differ for those who see colours otherwise (Okabe-Ito). */
  private static final Map<Site, Color> EYES =
      Map.of(
          Site.RIGHT, new Color(0, 114, 178),
          Site.LEFT, new Color(213, 94, 0),
          Site.BOTH, new Color(90, 90, 90));

  private int drawn;

  /** Returns the numbers of each eye as steps over classes of equal width. */
  String of(Spread spread) {
    Classes classes = Classes.of(spread);
    XYSeriesCollection data = new XYSeriesCollection();
    XYStepRenderer renderer = new XYStepRenderer();
    int series = 0;
    for (Site eye : Site.values()) {
      List<Double> numbers = spread.byEye().getOrDefault(eye.word(), List.of());
      if (!numbers.isEmpty()) {
        data.addSeries(series(eye.word(), numbers, classes));
        renderer.setSeriesPaint(series, EYES.getOrDefault(eye, Color.BLACK));
        renderer.setSeriesStroke(series, stroke(series));
        series++;
      }
    }
    NumberAxis values = axis(spread.unit().equals(Unit.ONE.label()) ? "" : spread.unit());
    NumberAxis counts = axis("share");
    XYPlot plot = new XYPlot(data, values, counts, renderer);
    plot.setBackgroundPaint(Color.WHITE);
    plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
    return draw(new JFreeChart(null, SMALL, plot, true), HEIGHT);
  }

  /** Returns how often each answer was given as lying bars. */
  String of(Answered answered) {
    DefaultCategoryDataset data = new DefaultCategoryDataset();
    answered.counts().forEach((answer, count) -> data.addValue(count, "times", answer));
    CategoryAxis answers = new CategoryAxis();
    answers.setTickLabelFont(SMALL);
    answers.setMaximumCategoryLabelWidthRatio(0.5f);
    NumberAxis counts = axis("times");
    counts.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    BarRenderer renderer = new BarRenderer();
    renderer.setBarPainter(new StandardBarPainter());
    renderer.setShadowVisible(false);
    renderer.setSeriesPaint(0, new Color(0, 114, 178));
    renderer.setMaximumBarWidth(0.15);
    CategoryPlot plot = new CategoryPlot(data, answers, counts, renderer);
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setBackgroundPaint(Color.WHITE);
    plot.setRangeGridlinePaint(Color.LIGHT_GRAY);
    return draw(new JFreeChart(null, SMALL, plot, false), 70 + BAR * answered.counts().size());
  }

  private static XYSeries series(String eye, List<Double> numbers, Classes classes) {
    XYSeries series = new XYSeries(eye, false, true);
    double[] shares = classes.shares(numbers);
    series.add(classes.start(0), 0);
    for (int i = 0; i < shares.length; i++) {
      series.add(classes.start(i), shares[i]);
    }
    series.add(classes.start(shares.length), shares[shares.length - 1]);
    series.add(classes.start(shares.length), 0);
    return series;
  }

  private static BasicStroke stroke(int series) {
    // The lines also differ without any colour.
    return series == 0
        ? new BasicStroke(1.8f)
        : new BasicStroke(
            1.8f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {5, 3}, 0);
  }

  private static NumberAxis axis(String label) {
    NumberAxis axis = new NumberAxis(label);
    axis.setLabelFont(SMALL);
    axis.setTickLabelFont(SMALL);
    axis.setAutoRangeIncludesZero(label.equals("share") || label.equals("times"));
    return axis;
  }

  private String draw(JFreeChart chart, int height) {
    try {
      SVGGraphics2D graphics =
          new SVGGraphics2D(
              DocumentBuilderFactory.newInstance()
                  .newDocumentBuilder()
                  .getDOMImplementation()
                  .createDocument("http://www.w3.org/2000/svg", "svg", null));
      chart.setBackgroundPaint(Color.WHITE);
      if (chart.getLegend() != null) {
        chart.getLegend().setItemFont(SMALL);
      }
      chart.draw(graphics, new Rectangle(WIDTH, height));
      StringWriter text = new StringWriter();
      graphics.stream(text, true);
      String svg = apart(text.toString());
      // Without its own measures a picture is cut where the page is narrower than it.
      String size =
          "<svg width=\"%1$d\" height=\"%2$d\" viewBox=\"0 0 %1$d %2$d\" ".formatted(WIDTH, height);
      return size + svg.substring(svg.indexOf("<svg ") + 5);
    } catch (ParserConfigurationException | IOException impossible) {
      throw new IllegalStateException("a picture could not be drawn", impossible);
    }
  }

  /** Pictures of one page share their names: each gets a letter and a number before its own. */
  private String apart(String svg) {
    drawn++;
    String mark = "p" + drawn + "-";
    return svg.replace(" id=\"", " id=\"" + mark)
        .replace("url(#", "url(#" + mark)
        .replace("href=\"#", "href=\"#" + mark);
  }
}
