package org.isopter.model.letter;

import java.math.BigDecimal;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.exam.AdministrativeSex;
import org.isopter.model.exam.Demographics;
import org.isopter.model.value.Quantity;

/** Says a person's age and sex in words. */
final class Ages {

  private Ages() {}

  /** Returns the words, for instance {@code 67 years, female}; empty where neither is stated. */
  static String text(Demographics person) {
    return Stream.concat(person.age().map(Ages::age).stream(), person.sex().map(Ages::sex).stream())
        .collect(Collectors.joining(", "));
  }

  private static String age(Quantity age) {
    String text = age.toString();
    boolean one = age.value().compareTo(BigDecimal.ONE) == 0;
    return one ? text.substring(0, text.length() - 1) : text;
  }

  private static String sex(AdministrativeSex sex) {
    return switch (sex) {
      case MALE, FEMALE -> sex.word();
      case OTHER -> "sex recorded as other";
      case UNKNOWN -> "sex recorded as unknown";
    };
  }
}
