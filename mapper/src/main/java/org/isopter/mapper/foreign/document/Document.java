package org.isopter.mapper.foreign.document;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Canonical;
import org.jspecify.annotations.Nullable;

/** One document taken apart: its resources, and the leaves around them. */
public final class Document {

  private static final Set<String> CARRIER = Set.of("resourceType", "type", "meta", "entry");

  /** A resource in a document. */
  public static final class Part {

    /** How the address of a resource begins that is made of its content. */
    public static final String CONTENT = "urn:uuid:";

    private final String at;
    private final Raw.Obj resource;
    private final Optional<String> fullUrl;
    private final Optional<String> keptBefore;
    private Optional<String> deletion = Optional.empty();
    private Optional<Part> madeOf = Optional.empty();
    private @Nullable String address;

    /**
     * Makes a part.
     *
     * @param at where it stands
     * @param fullUrl its address, where the entry gives one
     * @param keptBefore the word of the reason, where it was kept when it was read before
     */
    Part(String at, Raw.Obj resource, Optional<String> fullUrl, Optional<String> keptBefore) {
      this.at = at;
      this.resource = resource;
      this.fullUrl = fullUrl;
      this.keptBefore = keptBefore;
    }

    /** Returns where the resource stands, as a JSON pointer. */
    public String at() {
      return at;
    }

    /** Returns the resource. */
    public Raw.Obj resource() {
      return resource;
    }

    /** Returns the address that the entry states. */
    public Optional<String> fullUrl() {
      return fullUrl;
    }

    /** Returns where it stood in an earlier document, when it was kept from there. */
    public Optional<String> keptBefore() {
      return keptBefore;
    }

    /** Returns where a history says that the resource was deleted after this version of it. */
    public Optional<String> deletion() {
      return deletion;
    }

    /** Returns the resource that this one was made of; it is not in the document itself. */
    public Optional<Part> madeOf() {
      return madeOf;
    }

    /** Returns the address, or one made from the content, which is costly and so made once. */
    public String address() {
      if (address == null) {
        address = fullUrl.orElseGet(() -> CONTENT + Head.fingerprint(resource));
      }
      return address;
    }
  }

  private final List<Part> parts = new ArrayList<>();
  private final List<PlacedLeaf> frame = new ArrayList<>();
  private final List<PlacedLeaf> frameBefore = new ArrayList<>();

  private Document() {}

  /** Takes a document apart. */
  public static Document of(Raw json) {
    Document document = new Document();
    document.add(json, "", Optional.empty(), Optional.empty());
    return document;
  }

  /**
   * Takes documents apart that are read together.
   *
   * @param all whether an empty object is a document; otherwise it stands for one read elsewhere
   */
  public static Document of(List<Raw> documents, boolean all) {
    Document document = new Document();
    for (int i = 0; i < documents.size(); i++) {
      if (!all && documents.get(i).equals(Raw.Obj.EMPTY)) {
        continue;
      }
      document.add(documents.get(i), "/" + i, Optional.empty(), Optional.empty());
    }
    return document;
  }

  /** Returns this document with further leaves around its resources. */
  public Document with(List<PlacedLeaf> more) {
    frame.addAll(more);
    return this;
  }

  /** Returns this document without resources that are read already. */
  public Document without(Set<Part> read) {
    Document rest = new Document();
    parts.stream().filter(part -> !read.contains(part)).forEach(rest.parts::add);
    rest.frame.addAll(frame);
    rest.frameBefore.addAll(frameBefore);
    return rest;
  }

  /**
   * Returns this document with what was made of its resources behind each of them.
   *
   * @param made what was made of a resource, by its place within it
   */
  public Document with(Map<Part, Map<String, Raw.Obj>> made) {
    Document more = new Document();
    for (Part part : parts) {
      more.parts.add(part);
      made.getOrDefault(part, Map.of())
          .forEach(
              (at, resource) -> {
                Part one = new Part(part.at() + at, resource, Optional.empty(), Optional.empty());
                one.madeOf = Optional.of(part);
                more.parts.add(one);
              });
    }
    more.frame.addAll(frame);
    more.frameBefore.addAll(frameBefore);
    return more;
  }

  /** Returns the resources, in the order of the document. */
  public List<Part> parts() {
    return parts;
  }

  /** Returns the leaves around the resources; first those of an earlier document. */
  public List<PlacedLeaf> frame() {
    List<PlacedLeaf> all = new ArrayList<>(frameBefore);
    all.addAll(frame);
    return all;
  }

  /** Returns only the leaves of an earlier document. */
  public List<PlacedLeaf> frameBefore() {
    return frameBefore;
  }

  /** Returns the resources by the addresses under which others refer to them. */
  public Neighbours neighbours() {
    Neighbours neighbours = new Neighbours();
    parts.forEach(part -> neighbours.add(part.fullUrl(), part.resource()));
    return neighbours;
  }

  private void add(Raw value, String at, Optional<String> fullUrl, Optional<String> kept) {
    boolean bundle = Neighbours.type(value).equals("Bundle") && kept.isEmpty();
    if (bundle) {
      bundle((Raw.Obj) value, at);
    } else if (value instanceof Raw.Obj object && !Neighbours.type(object).isEmpty()) {
      parts.add(new Part(at, object, fullUrl, kept));
    } else {
      frame.add(new PlacedLeaf(at, value));
    }
  }

  private void bundle(Raw.Obj bundle, String at) {
    int before = parts.size();
    entries(bundle, at);
    if (bundle.string("type").equals(Optional.of("history"))) {
      deletions(bundle, at, parts.subList(before, parts.size()));
    }
  }

  /** A history lists the latest first, so that a deletion ends all versions that stand below it. */
  private static void deletions(Raw.Obj bundle, String at, List<Part> within) {
    Map<String, Part> byPlace = new HashMap<>();
    within.forEach(part -> byPlace.put(part.at(), part));
    Map<String, String> deleted = new HashMap<>();
    List<Raw.Obj> entries = bundle.objects("entry");
    for (int i = 0; i < entries.size(); i++) {
      String place = at + "/entry/" + i;
      Optional.ofNullable(byPlace.get(place + "/resource"))
          .ifPresent(part -> part.deletion = Optional.ofNullable(deleted.get(Panels.name(part))));
      entries
          .get(i)
          .object("request")
          .filter(request -> request.string("method").equals(Optional.of("DELETE")))
          .ifPresent(request -> deleted.putIfAbsent(request.string("url").orElse(""), place));
    }
  }

  private void entries(Raw.Obj bundle, String at) {
    boolean ours = isCarrier(bundle);
    for (PlacedLeaf member : new PlacedLeaf(at, bundle).children()) {
      String name = member.at().substring(at.length() + 1);
      if (name.equals("entry") && !member.children().isEmpty()) {
        member.children().forEach(this::entry);
      } else if (name.equals("meta")) {
        meta(member);
      } else if (!ours) {
        frame.add(member);
      }
    }
  }

  /**
   * Says whether a bundle is what {@code ForeignWriter} makes: its own leaves say nothing, and
   * would grow in number with each reading and writing.
   */
  private static boolean isCarrier(Raw.Obj bundle) {
    List<Raw> entries = bundle.list("entry");
    Optional<Raw> meta = bundle.get("meta");
    return CARRIER.containsAll(bundle.members().keySet())
        && bundle.string("type").equals(Optional.of(BundleKind.COLLECTION.word()))
        && (meta.isPresent() || !entries.isEmpty())
        && entries.stream().allMatch(entry -> kept(entry).isPresent())
        && meta.map(Document::isOurs).orElse(true);
  }

  private static boolean isOurs(Raw meta) {
    List<Raw.Obj> extensions = meta.objects("extension");
    return extensions.size() == 1
        && extensions.get(0).string("url").equals(Optional.of(Canonical.LEFT_OVER));
  }

  private void meta(PlacedLeaf meta) {
    boolean ours = false;
    for (Raw.Obj extension : meta.value().objects("extension")) {
      if (extension.string("url").equals(Optional.of(Canonical.LEFT_OVER))) {
        frameBefore.addAll(LeftOver.read(extension));
        ours = true;
      }
    }
    if (!ours) {
      frame.add(meta);
    }
  }

  private void entry(PlacedLeaf entry) {
    Optional<String> kept = kept(entry.value());
    Optional<String> fullUrl = entry.value().string("fullUrl");
    boolean whole = true;
    for (PlacedLeaf member : entry.children()) {
      boolean resource = member.at().equals(entry.at() + "/resource");
      if (resource && !Neighbours.type(member.value()).isEmpty()) {
        add(member.value(), member.at(), fullUrl, kept);
      } else if (kept.isEmpty()) {
        frame.add(member);
      }
      whole = false;
    }
    if (whole) {
      frame.add(entry);
    }
  }

  private static Optional<String> kept(Raw entry) {
    return entry.objects("extension").stream()
        .filter(extension -> extension.string("url").equals(Optional.of(Canonical.KEPT)))
        .findFirst()
        .flatMap(extension -> extension.string("valueCode"));
  }
}
