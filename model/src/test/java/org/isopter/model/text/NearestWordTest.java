package org.isopter.model.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class NearestWordTest {

  /** Worked by hand: "ca" becomes "ac" by one swap, "abc" needs a letter besides. */
  @Test
  void countsLettersAddedRemovedReplacedAndSwapped() {
    assertEquals(0, NearestWord.distance("disc", "disc"));
    assertEquals(1, NearestWord.distance("ca", "ac"));
    assertEquals(3, NearestWord.distance("ca", "abc"));
    assertEquals(1, NearestWord.distance("disc", "disk"));
    assertEquals(1, NearestWord.distance("disc", "discs"));
    assertEquals(3, NearestWord.distance("", "eye"));
  }

  /** The pair that books show for Levenshtein's distance: kitten and sitting are three apart. */
  @Test
  void isThreeFromKittenToSitting() {
    assertEquals(3, NearestWord.distance("kitten", "sitting"));
  }

  @Test
  void namesAllThatAreEquallyNear() {
    assertEquals(List.of("disc", "disk"), NearestWord.of("dist", words("disk", "disc", "macula")));
    assertEquals(List.of("unaided"), NearestWord.of("Unadied", words("unaided", "best")));
  }

  @Test
  void suggestsNothingThatIsFarOrStartsOtherwise() {
    assertEquals(List.of(), NearestWord.of("xyz", words("iop", "disc")));
    assertEquals(List.of(), NearestWord.of("risc", words("disc")));
    assertEquals(List.of(), NearestWord.of("od", words("os", "ou")));
  }

  private static Stream<String> words(String... words) {
    return Stream.of(words);
  }
}
