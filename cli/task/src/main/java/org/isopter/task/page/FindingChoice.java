package org.isopter.task.page;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Finding;
import org.jspecify.annotations.Nullable;

/** The findings that a name stands for. */
public final class FindingChoice {

  private static final Pattern NOT_LETTERS = Pattern.compile("[^a-z]+");

  private FindingChoice() {}

  /** Returns the finding of a name, or all without one; nothing when there is none of that name. */
  public static Optional<List<Finding<?>>> of(Catalogue catalogue, @Nullable String name) {
    return name == null
        ? Optional.of(catalogue.all())
        : catalogue.byId(name).map(finding -> List.of(finding));
  }

  /** Returns words about a name that no finding has, with those that share a word with it. */
  public static String unknown(Catalogue catalogue, @Nullable String name) {
    String near =
        catalogue.all().stream()
            .map(Finding::id)
            .filter(id -> shareWord(id, String.valueOf(name)))
            .collect(Collectors.joining(", "));
    String hint = near.isEmpty() ? "'isopter catalogue' lists them" : "there is " + near;
    return "no finding is called " + name + "; " + hint;
  }

  private static boolean shareWord(String id, String name) {
    return NOT_LETTERS
        .splitAsStream(name.toLowerCase(Locale.ROOT))
        .anyMatch(word -> word.length() > 2 && id.contains(word));
  }
}
