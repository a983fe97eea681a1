package org.isopter.mapper.fhir.element;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Keeps JSON as maps in the order of the text, lists, texts, numbers and truths. */
public final class TreeSink implements Sink {

  private final List<Object> whole = new ArrayList<>();
  private final Deque<Consumer<Object>> open = new ArrayDeque<>();
  private String name = "";

  /** Makes a sink for one document. */
  public TreeSink() {
    open.push(whole::add);
  }

  /**
   * Returns the object that was written.
   *
   * @throws java.util.NoSuchElementException when none was
   */
  @SuppressWarnings("unchecked")
  public Map<String, Object> object() {
    return (Map<String, Object>) whole.iterator().next();
  }

  private void put(Object value) {
    open.element().accept(value);
  }

  @Override
  public void startObject() {
    Map<String, Object> members = new LinkedHashMap<>();
    put(members);
    open.push(value -> members.put(name, value));
  }

  @Override
  public void endObject() {
    open.pop();
  }

  @Override
  public void startList() {
    List<Object> items = new ArrayList<>();
    put(items);
    open.push(items::add);
  }

  @Override
  public void endList() {
    open.pop();
  }

  @Override
  public void name(String next) {
    name = next;
  }

  @Override
  public void text(String value) {
    put(value);
  }

  @Override
  public void number(BigDecimal value) {
    put(value);
  }

  @Override
  public void truth(boolean value) {
    put(value);
  }
}
