package org.isopter.model.catalogue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.isopter.model.finding.Finding;

/** The findings of one group, in the order in which they are described. */
final class Entries {

  private final List<Finding<?>> all = new ArrayList<>();

  <V> Finding<V> add(Finding<V> finding) {
    all.add(finding);
    return finding;
  }

  List<Finding<?>> all() {
    return Collections.unmodifiableList(all);
  }
}
