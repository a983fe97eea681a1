package org.isopter.mapper.fhir.element;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.isopter.mapper.json.QuotedText;
import org.isopter.model.value.Code;

/**
 * Gathers JSON on one line as text, as a generator without blanks writes it. It trusts its caller
 * that names and values stand where they may: what is written here has one shape.
 */
public final class TextSink implements Sink {

  /** Names with quotes and a colon, constants with quotes, codings whole: as many as there are. */
  private static final Map<String, String> NAMES = new ConcurrentHashMap<>();

  private static final Map<String, String> CONSTANTS = new ConcurrentHashMap<>();
  private static final Map<Code, String> CODINGS = new ConcurrentHashMap<>();

  private final StringBuilder out;

  /** Whether what comes next stands behind something in the same object or list. */
  private boolean follows;

  /** Makes one for so many characters, and more where there are. */
  public TextSink(int expected) {
    this.out = new StringBuilder(expected);
  }

  /** Returns what was gathered. */
  public String text() {
    return out.toString();
  }

  @Override
  public void startObject() {
    start('{');
  }

  @Override
  public void endObject() {
    end('}');
  }

  @Override
  public void startList() {
    start('[');
  }

  @Override
  public void endList() {
    end(']');
  }

  private void start(char bracket) {
    separate();
    out.append(bracket);
    follows = false;
  }

  private void end(char bracket) {
    out.append(bracket);
    follows = true;
  }

  private void separate() {
    if (follows) {
      out.append(',');
    }
    follows = true;
  }

  @Override
  public void name(String name) {
    separate();
    String known = NAMES.get(name);
    out.append(
        known == null ? NAMES.computeIfAbsent(name, any -> QuotedText.of(any) + ":") : known);
    follows = false;
  }

  @Override
  public void text(String value) {
    separate();
    QuotedText.add(value, out);
  }

  @Override
  public void constant(String value) {
    separate();
    String known = CONSTANTS.get(value);
    out.append(known == null ? CONSTANTS.computeIfAbsent(value, QuotedText::of) : known);
  }

  @Override
  public void coding(Code code) {
    separate();
    String known = CODINGS.get(code);
    out.append(
        known == null
            ? CODINGS.computeIfAbsent(code, any -> new String(WrittenJson.coding(any), UTF_8))
            : known);
  }

  @Override
  public void number(BigDecimal value) {
    separate();
    out.append(value.toPlainString());
  }

  @Override
  public void truth(boolean value) {
    separate();
    out.append(value);
  }
}
