package org.isopter.mapper.foreign;

import java.util.Optional;
import org.isopter.model.value.LowVision;

/** The displays of the codes of vision too low for a chart. */
final class LowVisionNames {

  private LowVisionNames() {}

  static Optional<String> display(String token) {
    for (LowVision category : LowVision.values()) {
      if (category.code().token().equals(token)) {
        return Optional.of(category.code().display());
      }
    }
    return Optional.empty();
  }
}
