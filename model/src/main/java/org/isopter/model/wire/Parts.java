package org.isopter.model.wire;

import java.util.LinkedHashMap;
import java.util.Map;
import org.isopter.model.finding.Layout;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Variant;

/** Every part that a layout may have, whichever the notation. */
public final class Parts {

  private Parts() {}

  /** Returns the parts by key, those of a notation first. */
  public static Map<String, Part<?, ?>> of(Layout<?> layout) {
    Map<String, Part<?, ?>> parts = new LinkedHashMap<>();
    for (Variant variant : layout.variants()) {
      variant.specific().forEach(part -> parts.putIfAbsent(part.key(), part));
    }
    layout.commonParts().forEach(part -> parts.putIfAbsent(part.key(), part));
    return parts;
  }
}
