package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.isopter.model.note.habit.UnclearWords.Doubt;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NumberWords;

/** Writes the forms that an item may have been meant in; whoever calls it tries each. */
public final class Readings {

  private static final Pattern CLOCK = Pattern.compile("\\b(\\d{1,2}):([0-5]\\d)\\b");

  private static final Pattern SHARE = Pattern.compile("\\b(\\d{1,3}) ?%");

  private static final Pattern FIRST_VALUE = Pattern.compile("\\s(?=[+-]?\\d|[A-Za-z]+$)");

  private final String item;
  private final UnclearWords words;
  private final List<PossibleReading> all = new ArrayList<>();

  private Readings(String item, UnclearWords words) {
    this.item = item;
    this.words = words;
  }

  /** Returns the forms; most of them are not read. */
  public static List<PossibleReading> of(String item, Habits habits) {
    Readings readings = new Readings(item, habits.unclear());
    readings.eyes();
    readings.both();
    readings.behind();
    readings.figures();
    readings.swapped("plates", Doubt.PLATES, List.of("ishihara", "HRR"));
    readings.swapped("loss", Doubt.LOSS, List.of("loss", "reduced"));
    readings.swapped(
        "diplopia", Doubt.DIPLOPIA, List.of("binocular diplopia", "monocular diplopia"));
    readings.time();
    readings.denial();
    readings.scotoma();
    readings.desaturation();
    readings.swapped("margin", Doubt.MARGIN, List.of("blurred in part", "blurred all round"));
    readings.half();
    readings.platesOfEach();
    return List.copyOf(readings.all);
  }

  private void eyes() {
    for (Pattern pair : words.pairs()) {
      Matcher found = pair.matcher(item);
      if (found.find()) {
        String one = found.group(1);
        String two = found.group(2);
        if (one.equals(two)) {
          put("eyes", PossibleReading.EITHER, found, "R " + one + " L " + two);
          return;
        }
        put("eyes", "right then left", found, "R " + one + " L " + two);
        put("eyes", "left then right", found, "R " + two + " L " + one);
        return;
      }
    }
    Matcher value = FIRST_VALUE.matcher(item);
    if (value.find()) {
      put("eyes", "right", value, " R ");
      put("eyes", "left", value, " L ");
      put("eyes", "each eye", value, " each ");
    }
  }

  /** Offers what a number may be measured in; there are no other items with a chart or a light. */
  private void figures() {
    if (Lexer.words(item).stream().noneMatch(Readings::isNumber)) {
      return;
    }
    for (String notation : List.of("decimal", "logMAR", "letters")) {
      add("notation", notation, item + " " + notation);
    }
    for (String light : List.of("room", "bright", "dim")) {
      add("light", light, item + " " + light);
    }
  }

  private static boolean isNumber(String word) {
    return word.chars().anyMatch(Character::isDigit) || NumberWords.isNumber(word);
  }

  /** Offers the eyes of a nystagmus behind it. */
  private void behind() {
    if (in(Doubt.EYES).find()) {
      add("eyes", "both eyes", item + " OU");
      add("eyes", "right", item + " R");
      add("eyes", "left", item + " L");
    }
  }

  private void both() {
    Matcher found = in(Doubt.BOTH);
    if (found.find()) {
      put("both", "together", found, "BEO");
      put("both", "each eye", found, "each");
    }
  }

  /** Offers words in the place of one that does not say which of them is meant. */
  private void swapped(String kind, Doubt doubt, List<String> clear) {
    Matcher found = in(doubt);
    if (found.find()) {
      clear.forEach(word -> add(kind, word, found.replaceAll(word)));
    }
  }

  /** Offers how deep a central scotoma is; of the field even where the item does not name it. */
  private void scotoma() {
    Matcher found = in(Doubt.CENTRE);
    if (found.find()) {
      for (String loss : List.of("central absent", "central reduced")) {
        add("loss", loss, found.replaceAll(loss));
        add("loss", loss, "VF " + found.replaceAll(loss));
      }
    }
  }

  /** Offers of which field a half is lost: of both eyes, or of one. */
  private void half() {
    Matcher found = in(Doubt.HALF);
    if (found.find()) {
      for (String kind : List.of("homonymous", "temporal", "nasal")) {
        add("half", kind, found.replaceAll(kind + " $0"));
      }
    }
  }

  /** Offers what a percentage of desaturation is: what is left of the red, or what is lost. */
  private void desaturation() {
    Matcher found = in(Doubt.RED);
    if (found.find()) {
      String left = found.replaceAll("red sat");
      String lost = lost(left);
      if (left.equals(lost)) {
        add("red", PossibleReading.EITHER, left);
        return;
      }
      add("red", "left", left);
      add("red", "lost", lost);
    }
  }

  /** Returns the words with the rest of each percentage in its place. */
  private static String lost(String left) {
    Matcher share = SHARE.matcher(left);
    StringBuilder words = new StringBuilder();
    int from = 0;
    while (share.find()) {
      words.append(left, from, share.start()).append(rest(share.group(1))).append('%');
      from = share.end();
    }
    return words.append(left, from, left.length()).toString();
  }

  private static int rest(String share) {
    return Math.max(0, 100 - Integer.parseInt(share));
  }

  /** Offers the set of plates where it is not said whether both eyes were open either. */
  private void platesOfEach() {
    Matcher found = in(Doubt.PLATES);
    if (found.find()) {
      for (String plates : List.of("ishihara", "HRR")) {
        Matcher eyes = words.of(Doubt.BOTH).matcher(found.replaceFirst(plates));
        if (eyes.find()) {
          add("plates and eyes", plates + ", each eye", eyes.replaceFirst("each"));
          add("plates and eyes", plates + ", both eyes open", eyes.replaceFirst("BEO"));
        }
      }
    }
  }

  private void time() {
    Matcher found = CLOCK.matcher(item);
    if (found.find() && Integer.parseInt(found.group(1)) <= 12) {
      int hour = Integer.parseInt(found.group(1)) % 12;
      String morning = (hour < 10 ? "0" : "") + hour + ":" + found.group(2);
      if (found.group(2).equals("00")) {
        put("time", "place", found, found.group(1) + " o'clock");
      }
      put("time", "morning", found, morning + (hour >= 10 ? " am" : ""));
      put("time", "afternoon", found, (hour + 12) + ":" + found.group(2));
    }
  }

  private void denial() {
    Matcher found = in(Doubt.DENIAL);
    int last = -1;
    while (found.find()) {
      last = Math.max(last, found.start());
    }
    if (last > 0 && found.find(last)) {
      put("denial", "absent", found, "no " + found.group());
      put("denial", "present", found, found.group() + " present");
    }
  }

  private Matcher in(Doubt doubt) {
    return words.of(doubt).matcher(item);
  }

  private void put(String kind, String choice, Matcher found, String words) {
    add(kind, choice, item.substring(0, found.start()) + words + item.substring(found.end()));
  }

  private void add(String kind, String choice, String text) {
    all.add(new PossibleReading(kind, choice, text));
  }
}
