package org.isopter.model.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Held against the conversion of the JDK in no language. */
final class LowerCaseTest {

  @Test
  void isThatOfTheJdkInNoLanguage() {
    for (String text : List.of("", "VA", "6/9-2 SC", "@[`{", "Ödem", "İRİS", "ΣΑΣ", "STRASSE ß")) {
      assertEquals(text.toLowerCase(Locale.ROOT), LowerCase.of(text));
    }
    Random random = new Random(271828);
    for (int i = 0; i < 2000; i++) {
      StringBuilder text = new StringBuilder();
      random.ints(8, 1, 400).forEach(letter -> text.append((char) letter));
      assertEquals(text.toString().toLowerCase(Locale.ROOT), LowerCase.of(text.toString()));
    }
  }

  @Test
  void isTheSameTextWhereNothingChanges() {
    String text = "disc pale";

    assertSame(text, LowerCase.of(text));
  }
}
