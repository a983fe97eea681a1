package org.isopter.mapper.fhir.element;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.model.derive.Derived;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.text.FactStyle;
import org.isopter.model.text.FactWords;
import org.isopter.model.value.Site;

/** The few words that stand in a resource for a person to read; generated and escaped. */
public final class Narrative {

  static final String WANTED = "words in an XHTML div, without further markup";

  private static final String DIV = "<div xmlns=\"http://www.w3.org/1999/xhtml\"";
  private static final String END = "</div>";
  private static final Pattern ATTRIBUTES = Pattern.compile("( [a-z:]+=\"[^\"<&]*\")*");
  private static final Pattern ENTITY = Pattern.compile("&(amp|lt|gt|quot|#\\d+|#x[0-9a-fA-F]+);");

  private Narrative() {}

  /** Returns the narrative of an observation of a fact, as XHTML. */
  public static String of(Fact<?> fact) {
    return div(words(fact));
  }

  /** Returns the narrative of a derived statement, as XHTML. */
  public static String of(Derived derived) {
    return div(words(derived));
  }

  /** Returns what was found, one after the other. */
  public static String ofFacts(Exam exam) {
    List<String> all = exam.facts().stream().map(Narrative::words).toList();
    return all.isEmpty() ? of(exam) : div(String.join(" / ", all));
  }

  /** Returns what follows from the findings, one after the other. */
  public static String of(List<Derived> derived) {
    return div(derived.stream().map(Narrative::words).collect(Collectors.joining(" / ")));
  }

  private static String words(Fact<?> fact) {
    String found = FactWords.of(fact, FactStyle.SPACED).value("; ");
    return fact.finding().title() + eye(fact) + ": " + found;
  }

  private static String words(Derived derived) {
    String eye = derived.site() == Site.BOTH ? "" : ", " + derived.site().word() + " eye";
    return "Derived" + eye + ": " + derived.statement().text();
  }

  /** Returns the narrative of a whole examination, as XHTML. */
  public static String of(Exam exam) {
    int facts = exam.facts().size();
    return div("Eye examination, " + facts + (facts == 1 ? " finding" : " findings"));
  }

  private static String eye(Fact<?> fact) {
    // "Both eyes: right" would be read wrongly of a comparison between the eyes.
    if (fact.finding().sites().equals(Site.PAIR)) {
      return "";
    }
    return fact.site() == Site.BOTH ? ", both eyes" : ", " + fact.site().word() + " eye";
  }

  private static String div(String text) {
    return DIV + ">" + escape(text) + END;
  }

  /** Says whether it is such a narrative; that a server gave it attributes does not matter. */
  static boolean isPlain(String div) {
    int open = div.indexOf('>');
    if (!div.startsWith(DIV) || !div.endsWith(END) || open > div.length() - END.length()) {
      return false;
    }
    String words = div.substring(open + 1, div.length() - END.length());
    return (open == DIV.length() || ATTRIBUTES.matcher(div.substring(DIV.length(), open)).matches())
        && !words.isBlank()
        && words.indexOf('<') < 0
        && (words.indexOf('&') < 0 || ENTITY.matcher(words).replaceAll("").indexOf('&') < 0);
  }

  static String escape(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
