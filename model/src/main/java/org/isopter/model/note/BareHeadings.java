package org.isopter.model.note;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Sharing;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.value.Site;

/**
 * Acuities of which a heading without a value may say how they were tested: {@code VA R 6/9 L 6/12
 * with pinhole} is not the acuity without one.
 */
final class BareHeadings {

  static final String WHY =
      "a heading without a value stands behind it and may say how it was tested";

  private static final Set<String> MARKS = Set.of("/", "(", ")", "[", "]", ",", ":", "-", "=");

  private BareHeadings() {}

  /** Says whether a piece says nothing but that a pinhole was used. */
  static boolean isPinholeAlone(List<Token> piece) {
    return piece.stream().anyMatch(BareHeadings::isPinhole)
        && piece.stream()
            .allMatch(
                token ->
                    isPinhole(token)
                        || MARKS.contains(token.text())
                        || WordFiles.is(WordRole.LINK, token.text())
                        || Common.side(token).isPresent());
  }

  /** Says whether a pinhole is what a piece starts with. */
  static boolean startsWithPinhole(List<Token> piece) {
    return isPinhole(piece.get(0));
  }

  private static boolean isPinhole(Token token) {
    return WordFiles.is(WordRole.PINHOLE, token.text());
  }

  /**
   * Returns where the acuities start that a heading of acuity without a value may qualify: those
   * just before it in its clause, and of a pinhole also those just before that clause.
   *
   * @param heading the heading
   * @param noted what was said before it
   * @param clause how much of that was said before its clause
   */
  static int qualifiedBy(List<Token> heading, List<NotedFact> noted, int clause) {
    int from = noted.size();
    int furthest = isPinholeAlone(heading) ? 0 : Math.min(clause, from);
    while (from > furthest && noted.get(from - 1).fact().finding().equals(Acuities.DISTANCE)) {
      from--;
    }
    return from;
  }

  /** Returns acuities as they are written where they were read through a pinhole. */
  static String throughPinhole(List<NotedFact> acuities) {
    return acuities.stream()
        .map(noted -> NoteWriter.standard().write(List.of(noted.fact())))
        .map(line -> line.isOk() ? line.orThrow().strip().replaceFirst("^VA", "PH") : Advice.START)
        .collect(Collectors.joining("; "));
  }

  /**
   * Refuses an acuity of the other eye that goes on behind a pinhole, where only the eye of the
   * pinhole has one without it: {@code L: VA 0.3, ph 0.4; R: 1.0} may be without one too.
   *
   * @param noted what was said before
   * @param item what the item says that goes on
   */
  static void requireWithoutPinhole(List<NotedFact> noted, List<Fact<?>> item) throws NotRead {
    Set<Site> seen =
        Stream.concat(noted.stream().map(NotedFact::fact), item.stream())
            .filter(fact -> fact.finding().equals(Acuities.DISTANCE))
            .map(Fact::site)
            .collect(Collectors.toSet());
    for (Fact<?> fact : item) {
      boolean pinhole = fact.finding().equals(Acuities.PINHOLE);
      if (pinhole && !seen.isEmpty() && !seen.contains(fact.site())) {
        throw NotRead.because("it may be the acuity of this eye, or that through the pinhole");
      }
    }
  }

  /**
   * Refuses a pinhole that was not done behind the second eye alone: {@code VA R 6/9 L 6/6 pinhole
   * not done}.
   *
   * @param item what the item says
   */
  static void requireOfEach(List<Fact<?>> item) throws NotRead {
    List<Site> acuities = eyes(item, Acuities.DISTANCE);
    List<Site> pinholes = eyes(item, Acuities.PINHOLE);
    boolean last =
        acuities.size() == 2 && pinholes.equals(acuities.subList(1, 2)) && isAbsent(item);
    if (last) {
      throw NotRead.because(Sharing.OF_ONE_OR_BOTH);
    }
  }

  private static List<Site> eyes(List<Fact<?>> item, Finding<?> finding) {
    return item.stream()
        .filter(fact -> fact.finding().equals(finding))
        .<Site>map(Fact::site)
        .distinct()
        .toList();
  }

  private static boolean isAbsent(List<Fact<?>> item) {
    return item.stream()
        .filter(fact -> fact.finding().equals(Acuities.PINHOLE))
        .allMatch(fact -> fact.panel().isEmpty());
  }
}
