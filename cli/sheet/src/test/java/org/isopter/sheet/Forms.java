package org.isopter.sheet;

import java.util.List;
import java.util.Random;
import org.isopter.model.entry.EntryField;
import org.isopter.model.entry.UsualStep;

/** Forms as the page hands them over, made by hand or drawn by chance. */
final class Forms {

  private static final String HEADER =
      "id\u001fs-1\u001esubject\u001fp-1\u001eperformed\u001f2026-03-02T09:30:00+01:00\u001e";
  private static final List<String> ANY =
      List.of(
          "not done",
          "declined",
          "unable to test",
          "n/a",
          "what",
          "6/9",
          "6/12-2 cc",
          "CF @ 1 m",
          "HM",
          "3 mm dim",
          "4.0 mm bright; direct brisk",
          "0.30 logMAR",
          "N8 @ 40 cm",
          "13/15",
          "70%",
          "ST reduced",
          "full",
          "pale",
          "swollen",
          "swollen, Frisen 2",
          "2 mm",
          "14",
          "abduction -2, rest full",
          "21.0 NCT 10:30",
          "L 1+",
          "R 3+",
          "none",
          "R 6/6",
          "unequal");

  private Forms() {}

  /** Returns a form with a header and these fields: name, words, name, words. */
  static String of(String... namesAndWords) {
    StringBuilder form = new StringBuilder(HEADER);
    for (int i = 0; i < namesAndWords.length; i += 2) {
      put(form, namesAndWords[i], namesAndWords[i + 1]);
    }
    return form.toString();
  }

  /** Returns a form with about half of its fields filled, mostly with what fits. */
  static String drawn(Random random) {
    StringBuilder form = new StringBuilder(HEADER);
    for (EntryField row : UsualStep.allFields()) {
      for (String eye : row.perEye() ? List.of("right", "left") : List.of("both")) {
        if (random.nextBoolean()) {
          put(form, row.key() + "." + eye, words(row, random));
        }
      }
    }
    return form.toString();
  }

  private static String words(EntryField row, Random random) {
    return switch (random.nextInt(8)) {
      case 0, 1, 2 -> row.example();
      case 3, 4 -> row.normal().isEmpty() ? row.example() : row.normal();
      case 5, 6 -> ANY.get(random.nextInt(3));
      default -> ANY.get(random.nextInt(ANY.size()));
    };
  }

  private static void put(StringBuilder form, String name, String words) {
    form.append(name).append('\u001f').append(words).append('\u001e');
  }
}
