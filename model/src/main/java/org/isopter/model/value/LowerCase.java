package org.isopter.model.value;

import java.util.Locale;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/**
 * Lower case in no language. In a browser the general conversion is slow, so that plain letters,
 * which nearly all words consist of, are done here.
 */
@API(status = Status.INTERNAL)
public final class LowerCase {

  private static final int FIRST_OTHER = 128;

  private LowerCase() {}

  /** Returns a text in lower case. */
  public static String of(String text) {
    boolean capitals = false;
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      if (letter >= FIRST_OTHER) {
        return text.toLowerCase(Locale.ROOT);
      }
      capitals |= isCapital(letter);
    }
    return capitals ? plain(text) : text;
  }

  private static boolean isCapital(char letter) {
    return letter >= 'A' && letter <= 'Z';
  }

  private static String plain(String text) {
    StringBuilder lower = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      lower.append(isCapital(letter) ? (char) (letter - 'A' + 'a') : letter);
    }
    return lower.toString();
  }
}
