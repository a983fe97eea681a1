package org.isopter.model.clinical.lens;

import java.math.BigDecimal;
import org.isopter.model.clinical.statement.Numbers;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Lens power from one vertex distance to another: {@code F / (1 - d F)}, d in metres. A cylinder is
 * rebuilt from its two meridians; the sphere is never moved while the cylinder is kept. Source: the
 * arithmetic of thin lenses.
 */
public final class Vertex {

  private static final BigDecimal QUARTER = new BigDecimal("0.25");

  private Vertex() {}

  /**
   * Returns the lens at the cornea, powers to 0.001 dioptre, or a refusal where light would focus
   * at the cornea or before it.
   *
   * @param lens the lens in the spectacle plane
   * @param vertexMm the vertex distance in mm
   */
  public static Result<Lens> atCornea(Lens lens, BigDecimal vertexMm) {
    return moved(lens, vertexMm.doubleValue() / 1000);
  }

  /** Returns the lens in the spectacle plane of one at the cornea, as above. */
  public static Result<Lens> atSpectacles(Lens lens, BigDecimal vertexMm) {
    return moved(lens, -vertexMm.doubleValue() / 1000);
  }

  /** Returns the lens with sphere and cylinder each at the nearest quarter dioptre. */
  public static Lens nearestQuarter(Lens lens) {
    return Lens.of(quarter(lens.sphere()), quarter(lens.cylinder()), lens.axis()).orThrow();
  }

  private static Result<Lens> moved(Lens lens, double metres) {
    double along = lens.sphere().doubleValue();
    double across = lens.sphere().add(lens.cylinder()).doubleValue();
    if (1 - metres * along <= 0 || 1 - metres * across <= 0) {
      return Result.refused(
          Fault.of("", lens + " over " + metres + " m", "a power that focuses behind that plane"));
    }
    double sphere = along / (1 - metres * along);
    double cylinder = across / (1 - metres * across) - sphere;
    return Lens.of(Numbers.round(sphere, 3), Numbers.round(cylinder, 3), lens.axis());
  }

  private static BigDecimal quarter(BigDecimal power) {
    return Numbers.round(power.divide(QUARTER), 0).multiply(QUARTER);
  }
}
