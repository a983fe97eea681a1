package org.isopter.profiles.artefact.view;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The columns of a view in the making. */
final class ViewColumns {

  private final List<ViewColumn> columns = new ArrayList<>();
  private final Set<String> names = new HashSet<>();

  /**
   * Adds a column.
   *
   * @throws IllegalArgumentException when there is one of that name
   */
  ViewColumns add(String name, String type, String path, String meaning) {
    if (!names.add(name)) {
      throw new IllegalArgumentException("two columns are called " + name);
    }
    columns.add(new ViewColumn(name, type, path, meaning));
    return this;
  }

  /** Adds a coding: its code, its system and its display. */
  ViewColumns coding(String prefix, String path, String meaning) {
    add(prefix + "_code", "code", path + ".code", meaning + ": code");
    add(prefix + "_system", "string", text(path + ".system"), meaning + ": system of the code");
    return add(prefix + "_display", "string", path + ".display", meaning + ": in words");
  }

  List<ViewColumn> list() {
    return List.copyOf(columns);
  }

  /**
   * Returns the address at a path as text: a tabular view may have no column of type uri. The text
   * comes first, since an engine may take the type of the sum from there.
   */
  static String text(String path) {
    return "'' + " + path;
  }
}
