package org.isopter.model.note;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;

/**
 * Notes that are written from known facts, so that what they say is known without reading them.
 *
 * <p>How clinicians write each fact is common practice, no source.
 */
final class NotesFromFacts {

  /**
   * An item of a note and what it claims: for each eye and finding the value and its parts.
   *
   * @param text the item as it is written
   * @param claims what it says
   * @param ofOther what it says where its one eye is the other one; empty where it names both
   */
  record Item(String text, Map<String, Set<String>> claims, Map<String, Set<String>> ofOther) {}

  private interface OneEye {
    Map<String, Set<String>> claims(String eye);
  }

  private static final List<String> METRIC = List.of("6/5", "6/6", "6/9", "6/12", "6/36", "6/60");
  private static final List<String> IMPERIAL = List.of("20/20", "20/40", "20/70", "20/200");
  private static final List<String> QUADRANTS =
      List.of("superotemporal", "superonasal", "inferotemporal", "inferonasal");
  private static final List<String> GAZES =
      List.of("up-right", "up", "up-left", "right", "left", "down-right", "down", "down-left");
  private static final Map<String, String> REGIONS =
      Map.of("ST", "superotemporal", "SN", "superonasal", "IT", "inferotemporal");

  private final Random random;

  NotesFromFacts(Random random) {
    this.random = random;
  }

  /** Returns some items, each about something else. */
  List<Item> items() {
    List<Integer> kinds = new ArrayList<>();
    for (int kind = 0; kind < 17; kind++) {
      kinds.add(kind);
    }
    Collections.shuffle(kinds, random);
    return kinds.subList(0, 3 + random.nextInt(6)).stream().map(this::item).toList();
  }

  private Item item(int kind) {
    return switch (kind) {
      case 0 -> acuity();
      case 1 -> two("IOP", numbers(8, 40), "intraocular-pressure: %s mmHg", tail(" mmHg", ""));
      case 2 -> two("pupils", numbers(2, 8), "pupil-size: %s mm, lighting dim", " dim");
      case 3 -> defect();
      case 4 -> two("Ishihara", scores(), "colour-plates: %s, plate-test ishihara", "");
      case 5 -> two("red sat", shares(), "red-saturation: %s %%", "");
      case 6 -> discs();
      case 7 -> two("C/D", ratios(), "cup-disc-ratio: %s", "");
      case 8 -> field();
      case 9 -> movements();
      case 10 -> ptosis();
      case 11 -> pair(oneOf("no diplopia", "denies diplopia"), "both double-vision: none");
      case 12 -> pair(oneOf("no nystagmus", "nystagmus nil"), "both nystagmus: none");
      case 13 -> two("CCT", numbers(480, 620), "central-corneal-thickness: %s um", "");
      case 14 -> pain();
      case 15 -> two("MRD1", numbers(1, 6), "margin-reflex-distance: %s mm", tail(" mm", ""));
      default -> two("near", prints(), "near-acuity: %s, notation points", "");
    };
  }

  private Item acuity() {
    boolean metric = random.nextBoolean();
    String notation = ", notation snellen-" + (metric ? "metric" : "imperial");
    String head = oneOf("VA", "VA sc", "VA cc", "visual acuity");
    String correction =
        head.endsWith("sc")
            ? ", correction unaided"
            : head.endsWith("cc") ? ", correction habitual" : "";
    return two(head, metric ? METRIC : IMPERIAL, "distance-acuity: %s" + notation + correction, "");
  }

  /** Returns an item that gives each eye a value, in one of the orders in which people write. */
  private Item two(String head, List<String> values, String line, String unit) {
    String one = values.get(random.nextInt(values.size()));
    String two = values.get(random.nextInt(values.size()));
    boolean english = random.nextBoolean();
    String right = english ? "R" : oneOf("OD", "RE");
    String left = english ? "L" : right.equals("OD") ? "OS" : "LE";
    String each = unit.startsWith(" mm") ? unit : "";
    String last = each.isEmpty() ? unit : "";
    String text =
        switch (random.nextInt(3)) {
          case 0 -> head + " " + one + each + " " + right + " " + two + each + " " + left + last;
          case 1 -> head + " " + right + " " + one + each + ", " + left + " " + two + each + last;
          default -> head + " " + right + " " + one + each + " " + left + " " + two + each + last;
        };
    Map<String, Set<String>> claims = new LinkedHashMap<>();
    claim(claims, "right " + line.formatted(one.replace("%", "")));
    claim(claims, "left " + line.formatted(two.replace("%", "")));
    return new Item(text, claims, Map.of());
  }

  private Item defect() {
    return random.nextBoolean()
        ? pair(oneOf("no RAPD", "RAPD nil", "no APD"), "both afferent-defect: none")
        : one(
            List.of("RAPD %s", "%s RAPD", "%s APD"), eye -> claims("both afferent-defect: " + eye));
  }

  private Item discs() {
    return random.nextBoolean()
        ? one(
            List.of("%s disc swollen", "disc %s swollen"),
            eye -> claims(eye + " disc-swelling: present"))
        : pair(
            oneOf("discs pink", "both discs pink"),
            "right disc-colour: pink",
            "left disc-colour: pink");
  }

  private Item field() {
    String region = oneOf("ST", "SN", "IT");
    String full = String.join(" full, ", QUADRANTS) + " full";
    return random.nextBoolean()
        ? one(
            List.of("VF %s " + region + " loss", "fields: %s " + region + " loss"),
            eye -> claims(eye + " confrontation-field: " + REGIONS.get(region) + " absent"))
        : pair(
            oneOf("fields full", "VF full"),
            "right confrontation-field: " + full,
            "left confrontation-field: " + full);
  }

  private Item movements() {
    String grade = oneOf("-1", "-2", "-3", "-4");
    String full = String.join(" 0, ", GAZES) + " 0";
    return random.nextBoolean()
        ? one(
            List.of("%s abd " + grade + ", rest full", "EOM %s abduction " + grade + ", rest full"),
            eye ->
                claims(
                    eye
                        + " eye-movements: "
                        + full.replace(", " + eye + " 0", ", " + eye + " " + grade)))
        : pair(
            oneOf("EOM full", "eye movements full", "EOMI"),
            "right eye-movements: " + full,
            "left eye-movements: " + full);
  }

  private Item ptosis() {
    return random.nextBoolean()
        ? one(
            List.of("ptosis %s 2 mm", "%s ptosis 2 mm"),
            eye -> claims(eye + " ptosis: present, ptosis-amount 2 mm"))
        : pair(oneOf("no ptosis", "ptosis nil"), "right ptosis: absent", "left ptosis: absent");
  }

  private Item pain() {
    return random.nextBoolean()
        ? one(
            List.of("pain on eye movement %s", "%s pain on movement"),
            eye -> claims(eye + " pain-on-movement: present"))
        : pair(
            "no pain on eye movement",
            "right pain-on-movement: absent",
            "left pain-on-movement: absent");
  }

  private Item one(List<String> forms, OneEye of) {
    boolean right = random.nextBoolean();
    String side = right ? oneOf("R", "right", "OD") : oneOf("L", "left", "OS");
    String form = forms.get(random.nextInt(forms.size()));
    return new Item(
        form.formatted(side),
        of.claims(right ? "right" : "left"),
        of.claims(right ? "left" : "right"));
  }

  private static Item pair(String text, String... lines) {
    return new Item(text, claims(lines), Map.of());
  }

  private static Map<String, Set<String>> claims(String... lines) {
    Map<String, Set<String>> claims = new LinkedHashMap<>();
    Arrays.stream(lines).forEach(line -> claim(claims, line));
    return claims;
  }

  /** Adds a line as {@code right disc-colour: pink} to the claims. */
  static void claim(Map<String, Set<String>> claims, String line) {
    int colon = line.indexOf(": ");
    Set<String> parts = new TreeSet<>(Arrays.asList(line.substring(colon + 2).split(", ", -1)));
    parts.removeIf(part -> part.startsWith("remark "));
    claims.put(line.substring(0, colon), parts);
  }

  private String tail(String... tails) {
    return oneOf(tails);
  }

  private String oneOf(String... words) {
    return words[random.nextInt(words.length)];
  }

  private static List<String> numbers(int from, int to) {
    return some(from, to, (n, any) -> String.valueOf(n));
  }

  private static List<String> scores() {
    return some(1, 17, (n, any) -> n + "/17");
  }

  private static List<String> shares() {
    return some(1, 10, (n, any) -> n + "0%");
  }

  private static List<String> ratios() {
    return some(1, 9, (n, any) -> "0." + n);
  }

  private static List<String> prints() {
    return List.of("N5", "N6", "N8", "N12", "N24");
  }

  private static List<String> some(int from, int to, BiFunction<Integer, Integer, String> word) {
    List<String> words = new ArrayList<>();
    for (int n = from; n <= to; n++) {
      words.add(word.apply(n, to));
    }
    return words;
  }
}
