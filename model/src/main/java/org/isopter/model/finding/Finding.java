package org.isopter.model.finding;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/**
 * A finding of the eye examination, described once; the constant is the key to its facts.
 *
 * @param <V> the Java type of its value
 */
public final class Finding<V> {

  private final String id;
  private final String title;
  private final Codes codes;
  private final List<Site> sites;
  private final Layout<V> layout;
  private final Optional<Answers> methods;
  private final List<String> distinguishing;
  private final List<Citation> citations;
  private final String note;

  private Finding(Builder<V> from) {
    this.id = from.id;
    this.title = from.title;
    this.codes = from.codes;
    this.sites = from.sites;
    this.layout = from.layout;
    this.methods = from.methods;
    this.distinguishing = from.distinguishing;
    this.citations = List.copyOf(from.citations);
    this.note = from.note;
  }

  /** Starts the description of a finding. */
  public static Draft of(String id, String title) {
    return new Draft(id, title);
  }

  /** Returns the name that records use, in lower case with hyphens. */
  public String id() {
    return id;
  }

  /** Returns the title for people. */
  public String title() {
    return title;
  }

  /** Returns the codes it travels under. */
  public Codes codes() {
    return codes;
  }

  /** Returns the sites it may be about. */
  public List<Site> sites() {
    return sites;
  }

  /** Returns how its value is laid out. */
  public Layout<V> layout() {
    return layout;
  }

  /** Returns the techniques it may be found by; empty where none is recorded. */
  public Optional<Answers> methods() {
    return methods;
  }

  /** Returns the keys of the parts that tell two facts of one eye apart, such as the correction. */
  public List<String> distinguishing() {
    return distinguishing;
  }

  /** Returns where its facts of the trade come from. */
  public List<Citation> citations() {
    return citations;
  }

  /** Returns what a reader must know to record it the same way as others; may be empty. */
  public String note() {
    return note;
  }

  @Override
  public String toString() {
    return id;
  }

  /** A finding whose value is not yet described. */
  public static final class Draft {
    private final String id;
    private final String title;
    private final Map<Site, Code> bySite = new LinkedHashMap<>();
    private final List<Code> general = new ArrayList<>();
    private final List<Codes.Refined> refined = new ArrayList<>();
    private final List<Code> former = new ArrayList<>();

    private Draft(String id, String title) {
      this.id = id;
      this.title = title;
    }

    /** Adds a published code that leaves the side to the body site. */
    public Draft code(Code code) {
      general.add(code);
      return this;
    }

    /** Adds the published codes that name the right and the left eye. */
    public Draft sided(Code right, Code left) {
      bySite.put(Site.RIGHT, right);
      bySite.put(Site.LEFT, left);
      return this;
    }

    /** Adds the published code that names one eye, where that of its fellow is not known. */
    public Draft sided(Site site, Code code) {
      bySite.put(site, code);
      return this;
    }

    /** Adds published codes for single sites that hold only where the fact says so. */
    public Draft sidedWhen(When when, Map<Site, Code> sides) {
      refined.add(new Codes.Refined(when, sides));
      return this;
    }

    /** Adds a published code that holds, whatever the site, only where the fact says so. */
    public Draft codeWhen(When when, Code code) {
      Map<Site, Code> sides = new LinkedHashMap<>();
      Site.EACH_OR_BOTH.forEach(site -> sides.put(site, code));
      return sidedWhen(when, sides);
    }

    /** Adds a code, or a display of ours, that older versions wrote: it is read, never written. */
    public Draft formerly(Code code) {
      former.add(code);
      return this;
    }

    /** Adds the published code that names both eyes together. */
    public Draft together(Code both) {
      bySite.put(Site.BOTH, both);
      return this;
    }

    /** Describes the value as a single one. */
    public <V> Builder<V> value(Shape<V> shape) {
      return value(Layout.of(shape));
    }

    /** Describes the value. */
    public <V> Builder<V> value(Layout<V> layout) {
      return new Builder<>(this, layout);
    }

    private Codes codes() {
      // Our own code only where no published one was found. Where one was found later, records
      // that were written before still hold ours.
      List<Code> ours = List.of(Code.local("finding", id, title));
      List<Code> older = new ArrayList<>(general.isEmpty() ? List.of() : ours);
      older.addAll(former);
      return new Codes(bySite, general.isEmpty() ? ours : general, refined, older);
    }
  }

  /**
   * A finding that is nearly described.
   *
   * @param <V> the Java type of its value
   */
  public static final class Builder<V> {
    private final String id;
    private final String title;
    private final Codes codes;
    private final Layout<V> layout;
    private List<Site> sites = Site.EACH_EYE;
    private Optional<Answers> methods = Optional.empty();
    private List<String> distinguishing = List.of();
    private final List<Citation> citations = new ArrayList<>();
    private String note = "";

    private Builder(Draft draft, Layout<V> layout) {
      this.id = draft.id;
      this.title = draft.title;
      this.codes = draft.codes();
      this.layout = layout;
    }

    /** Says which sites it may be about; each eye apart unless said. */
    public Builder<V> at(List<Site> where) {
      this.sites = List.copyOf(where);
      return this;
    }

    /** Says by which techniques it may be found. */
    public <E extends Enum<E> & Concept> Builder<V> by(Class<E> techniques) {
      this.methods = Optional.of(Answers.of(techniques));
      return this;
    }

    /** Says which parts tell two facts of one eye apart. */
    public Builder<V> distinguishedBy(Part<?, ?>... parts) {
      this.distinguishing = Arrays.stream(parts).<String>map(Part::key).toList();
      return this;
    }

    /** Names the source of a fact of the trade. */
    public Builder<V> cite(String source) {
      citations.add(new Citation(source));
      return this;
    }

    /** Says what a reader must know to record it the same way as others. */
    public Builder<V> note(String text) {
      this.note = text;
      return this;
    }

    /** Returns the finding. */
    public Finding<V> build() {
      return new Finding<>(this);
    }
  }
}
