package org.isopter.mapper.foreign.run;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What is read together, so that a reference or a visit may reach from one document to another. */
public enum Together {
  /**
   * The single resources of one folder, or of one block of lines. A bundle stands for itself: in
   * another bundle, {@code Patient/1} is another person.
   */
  FOLDER,
  /** Everything: whoever asks for it knows that all of it comes from one system. */
  ALL,
  /** Nothing: each file and each line by itself. */
  NONE;

  /** Returns the word of the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  @Override
  public String toString() {
    return word();
  }

  /** Says whether a document need not wait for others. */
  boolean alone(Parsed document) {
    return this == NONE || (this == FOLDER && document.isBundle());
  }

  /** Returns the documents in groups, in the order in which the first of each stood. */
  List<List<Parsed>> groups(List<Parsed> documents) {
    Map<String, List<Parsed>> groups = new LinkedHashMap<>();
    for (int i = 0; i < documents.size(); i++) {
      String key = key(documents.get(i), i);
      groups.computeIfAbsent(key, any -> new ArrayList<>()).add(documents.get(i));
    }
    Collection<List<Parsed>> inOrder = groups.values();
    return List.copyOf(inOrder);
  }

  private String key(Parsed document, int number) {
    if (alone(document)) {
      return "alone " + number;
    }
    return this == ALL ? "all" : "folder " + document.origin().folder();
  }
}
