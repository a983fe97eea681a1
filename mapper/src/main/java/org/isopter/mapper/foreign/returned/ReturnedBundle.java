package org.isopter.mapper.foreign.returned;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.LeftOver;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.value.Canonical;
import org.isopter.model.value.Fault;

/** A bundle of ours, with what was carried along set apart. */
public final class ReturnedBundle {

  private final Raw.Obj bundle;
  private final Document document;
  private final List<Carried.OfFact> leaves = new ArrayList<>();

  private ReturnedBundle(Raw.Obj bundle) {
    this.document = Document.of(bundle);
    this.bundle = strip(bundle);
  }

  /** Says whether the bundle holds the panel of one of our examinations. */
  public static boolean isBundle(Raw.Obj bundle) {
    return bundle.objects("entry").stream()
        .map(entry -> entry.object("resource"))
        .flatMap(Optional::stream)
        .anyMatch(ReturnedBundle::isPanel);
  }

  /** Returns a bundle that may be one of ours, come back. */
  public static ReturnedBundle of(Raw.Obj bundle) {
    return new ReturnedBundle(bundle);
  }

  /** Says whether a leaf tells only how a resource is kept and shown. */
  public static boolean isTransport(PlacedLeaf leaf) {
    return leaf.at().equals("/id")
        || leaf.at().startsWith("/meta/")
        || leaf.at().startsWith("/text/");
  }

  /** Returns the bundle without what was carried along. */
  public Raw.Obj bundle() {
    return bundle;
  }

  /** Returns the reading of the examination that the bundle holds. */
  public Reading reading(Exam exam) {
    String prefix = exam.header().id().value() + "/";
    List<Carried.OfFact> ofFacts =
        leaves.stream()
            .map(
                of ->
                    new Carried.OfFact(
                        of.fact().substring(Math.min(prefix.length(), of.fact().length())),
                        of.leaves()))
            .toList();
    List<Carried.Whole> wholes = new ArrayList<>();
    List<ReadResource> resources = new ArrayList<>();
    for (Document.Part part : document.parts()) {
      part.keptBefore()
          .ifPresent(why -> wholes.add(new Carried.Whole(part.address(), why, part.resource())));
      resources.add(new ReadResource(part.at(), part.resource(), outcome(part, exam)));
    }
    Carried carried = new Carried(ofFacts, wholes, document.frameBefore());
    ReadExam.ReadFact whole = new ReadExam.ReadFact("", Set.of());
    List<ReadExam.ReadFact> read = Collections.nCopies(exam.facts().size(), whole);
    ReadExam all = new ReadExam(exam, carried, "", read, List.of(""));
    return Reading.of(List.of(all), resources, Carried.NOTHING);
  }

  private static ResourceOutcome outcome(Document.Part part, Exam exam) {
    if (part.keptBefore().isPresent()) {
      Why why = Why.of(part.keptBefore().get());
      return new ResourceOutcome.Kept(List.of(new Reason(why, Fault.of("", Why.KEPT_BEFORE, ""))));
    }
    boolean panel = isPanel(part.resource());
    return new ResourceOutcome.Exact(panel ? exam.facts() : List.of());
  }

  /** Says whether a resource is the panel of one of our examinations. */
  static boolean isPanel(Raw resource) {
    Optional<Raw.Obj> code = resource.object("code");
    for (Raw.Obj coding : code.isPresent() ? code.get().objects("coding") : List.<Raw.Obj>of()) {
      boolean ours = coding.string("system").filter(ExamCodes.PANEL.system()::equals).isPresent();
      if (ours && coding.string("code").filter(ExamCodes.PANEL.code()::equals).isPresent()) {
        return true;
      }
    }
    return false;
  }

  private Raw.Obj strip(Raw.Obj whole) {
    List<Raw> entries = new ArrayList<>();
    for (Raw.Obj entry : whole.objects("entry")) {
      boolean kept =
          entry.objects("extension").stream()
              .anyMatch(x -> x.string("url").equals(Optional.of(Canonical.KEPT)));
      if (!kept) {
        entries.add(
            entry
                .object("resource")
                .map(r -> entry.with("resource", withoutLeftOver(r)))
                .orElse(entry));
      }
    }
    Raw.Obj bare = whole.with("entry", Raw.of(entries));
    // What is left over of a bundle stands in its meta; the document has it already.
    return bare.object("meta")
        .map(meta -> bare.with("meta", LeftOver.outOf(meta).ours()))
        .orElse(bare);
  }

  private Raw.Obj withoutLeftOver(Raw.Obj resource) {
    LeftOver.Found found = LeftOver.outOf(resource);
    if (!found.leaves().isEmpty()) {
      String name =
          resource.objects("identifier").stream()
              .findFirst()
              .flatMap(id -> id.string("value"))
              .orElse("");
      leaves.add(new Carried.OfFact(name, found.leaves()));
    }
    return found.ours();
  }
}
