package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One document taken apart: its resources, and the leaves around them. */
final class Document {

  /**
   * A resource in a document.
   *
   * @param at where it stands
   * @param fullUrl its address, where the entry gives one
   * @param keptBefore the word of the reason, where it was kept when it was read before
   */
  record Part(String at, Raw.Obj resource, Optional<String> fullUrl, Optional<String> keptBefore) {

    /** Returns the address, or one made from the content. */
    String address() {
      return fullUrl.orElseGet(() -> "urn:uuid:" + Head.fingerprint(resource));
    }
  }

  private final List<Part> parts = new ArrayList<>();
  private final List<Placed> frame = new ArrayList<>();
  private final List<Placed> frameBefore = new ArrayList<>();

  private Document() {}

  /** Takes a document apart. */
  static Document of(Raw json) {
    Document document = new Document();
    document.add(json, "", Optional.empty(), Optional.empty());
    return document;
  }

  /**
   * Takes documents apart that are read together.
   *
   * @param all whether an empty object is a document; otherwise it stands for one read elsewhere
   */
  static Document of(List<Raw> documents, boolean all) {
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
  Document with(List<Placed> more) {
    frame.addAll(more);
    return this;
  }

  List<Part> parts() {
    return parts;
  }

  /** Returns the leaves around the resources; first those of an earlier document. */
  List<Placed> frame() {
    List<Placed> all = new ArrayList<>(frameBefore);
    all.addAll(frame);
    return all;
  }

  /** Returns only the leaves of an earlier document. */
  List<Placed> frameBefore() {
    return frameBefore;
  }

  Neighbours neighbours() {
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
      frame.add(new Placed(at, value));
    }
  }

  private void bundle(Raw.Obj bundle, String at) {
    boolean rest = isRest(bundle);
    for (Placed member : new Placed(at, bundle).children()) {
      String name = member.at().substring(at.length() + 1);
      if (rest && List.of("resourceType", "type").contains(name)) {
        continue;
      }
      if (name.equals("entry") && !member.children().isEmpty()) {
        member.children().forEach(this::entry);
      } else if (name.equals("meta")) {
        meta(member);
      } else {
        frame.add(member);
      }
    }
  }

  /** Says whether it is a bundle that we made of what was carried without an examination. */
  private static boolean isRest(Raw.Obj bundle) {
    List<Raw.Obj> entries = bundle.objects("entry");
    boolean framed = bundle.object("meta").map(Document::isOurs).orElse(false);
    return bundle.string("type").equals(Optional.of("collection"))
        && (framed || !entries.isEmpty())
        && entries.stream().allMatch(entry -> kept(entry).isPresent());
  }

  private static boolean isOurs(Raw meta) {
    return meta.objects("extension").stream()
        .anyMatch(extension -> extension.string("url").equals(Optional.of(LeftOver.URL)));
  }

  private void meta(Placed meta) {
    boolean ours = false;
    for (Raw.Obj extension : meta.value().objects("extension")) {
      if (extension.string("url").equals(Optional.of(LeftOver.URL))) {
        frameBefore.addAll(LeftOver.read(extension));
        ours = true;
      }
    }
    if (!ours) {
      frame.add(meta);
    }
  }

  private void entry(Placed entry) {
    Optional<String> kept = kept(entry.value());
    Optional<String> fullUrl = entry.value().string("fullUrl");
    boolean whole = true;
    for (Placed member : entry.children()) {
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
        .filter(extension -> extension.string("url").equals(Optional.of(ForeignWriter.KEPT)))
        .findFirst()
        .flatMap(extension -> extension.string("valueCode"));
  }
}
