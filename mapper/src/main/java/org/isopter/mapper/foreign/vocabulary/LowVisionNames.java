package org.isopter.mapper.foreign.vocabulary;

import java.util.Optional;
import org.isopter.model.value.LowVision;

/** The displays of the codes of vision too low for a chart. */
public final class LowVisionNames {

  private LowVisionNames() {}

  /** Returns the display of the low-vision category of that code, if it is one. */
  public static Optional<String> display(String token) {
    for (LowVision category : LowVision.values()) {
      if (category.code().token().equals(token)) {
        return Optional.of(category.code().display());
      }
    }
    return Optional.empty();
  }
}
