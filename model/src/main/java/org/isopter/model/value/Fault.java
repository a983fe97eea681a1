package org.isopter.model.value;

/**
 * One thing that is wrong with an input: where, what was seen, what was wanted, what to do.
 *
 * @param path where it stands, in the terms of the input; empty for the whole
 * @param seen what was seen there
 * @param wanted what would have been right
 * @param advice what to do; empty when the wanted value says it all
 */
public record Fault(String path, String seen, String wanted, String advice) {

  /** Returns a fault without advice. */
  public static Fault of(String path, String seen, String wanted) {
    return new Fault(path, seen, wanted, "");
  }

  /** Returns this fault seen from further out: the prefix goes before its path. */
  public Fault within(String prefix) {
    return new Fault(path.isEmpty() ? prefix : prefix + "." + path, seen, wanted, advice);
  }

  /** Returns the fault at another path. */
  public Fault at(String otherPath) {
    return new Fault(otherPath, seen, wanted, advice);
  }

  /** Returns the fault on one line. */
  @Override
  public String toString() {
    String where = path.isEmpty() ? "" : path + ": ";
    String todo = advice.isEmpty() ? "" : "; " + advice;
    return where + "saw " + seen + ", wanted " + wanted + todo;
  }
}
