package org.isopter.mapper.foreign;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.DocumentSources;
import org.isopter.mapper.foreign.document.Holders;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.document.Versions;
import org.isopter.mapper.foreign.form.FormAnswers;
import org.isopter.mapper.foreign.form.FormsOfOthers;
import org.isopter.mapper.foreign.ledger.Lazy;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.observation.Joining;
import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.foreign.observation.Translator;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.returned.ReturnedBundle;
import org.isopter.mapper.foreign.returned.ReturnedRecords;
import org.isopter.mapper.foreign.returned.WrittenCodes;
import org.isopter.mapper.foreign.returned.WrittenName;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.json.RawTokens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Reads examinations from FHIR R4 JSON that any system wrote: each resource is exact, translated by
 * named rules, or kept verbatim; nothing is dropped and nothing is guessed.
 *
 * <p>Safe for use by several threads at once.
 */
public final class ForeignReader {

  /** From so many resources on, sharing them among the processors is worth it. */
  private static final int MANY = 500;

  private final Supplier<Vocabulary> vocabulary;
  private final Options options;
  private final Supplier<WrittenCodes> codes;
  private final FhirReader exact;
  private final Supplier<FormAnswers> form;
  private final RawJson json;

  /** Makes a reader of the findings of a catalogue. */
  public ForeignReader(Catalogue catalogue, Options options) {
    this.vocabulary = Lazy.of(() -> new Vocabulary(catalogue, options.aliases()));
    this.options = options;
    this.codes = Lazy.of(() -> new WrittenCodes(catalogue, vocabulary.get()));
    this.exact = new FhirReader(catalogue);
    this.form = Lazy.of(() -> new FormAnswers(catalogue));
    this.json = new RawJson(options.limits());
  }

  /** Reads a resource or a bundle in UTF-8; refused only where it is no JSON within the limits. */
  public Result<Reading> read(byte[] document) {
    return json.read(document).map(this::read);
  }

  /** Reads a resource or a bundle; refused only where it is no JSON within the limits. */
  public Result<Reading> read(String document) {
    return json.read(document).map(this::read);
  }

  /**
   * Reads a document in JSON or XML of a release of FHIR. What a conversion to R4 leaves out is
   * carried in the frame of the document, under the name of the release.
   */
  public Result<Reading> read(byte[] document, Release release) {
    return sources().read(document, release).map(this::read);
  }

  private Reading read(DocumentSources.Source source) {
    if (source.lost().isEmpty()) {
      return read(source.json());
    }
    return foreign(Document.of(source.json()).with(source.lost()));
  }

  /** Returns what reads documents of any form for this reader. */
  @API(status = Status.INTERNAL)
  public DocumentSources sources() {
    return new DocumentSources(options.limits(), options.stated());
  }

  /** Returns the limits of this reader. */
  public Limits limits() {
    return options.limits();
  }

  /** Reads a document that is already parsed. */
  public Reading read(Raw document) {
    Optional<Result<Reading>> own = own(document);
    if (own.isPresent() && own.get() instanceof Result.Ok<Reading> ok) {
      return ok.value();
    }
    return foreign(Document.of(document)).with(strangers("", own));
  }

  /**
   * Reads documents that belong together, such as the files of one folder: what one refers to may
   * stand in another, and observations of one visit may be spread over them. Places begin with the
   * number of the document, from 0.
   */
  public Reading readTogether(List<Raw> documents) {
    return readAll(
        documents.stream().map(json -> new DocumentSources.Source(json, List.of())).toList());
  }

  /** Reads documents of any form that belong together. */
  @API(status = Status.INTERNAL)
  public Reading readAll(List<DocumentSources.Source> documents) {
    List<Raw> others = new ArrayList<>();
    List<Reading> readings = new ArrayList<>();
    List<Reading.Stranger> strangers = new ArrayList<>();
    List<PlacedLeaf> lost = new ArrayList<>();
    for (int i = 0; i < documents.size(); i++) {
      Raw json = documents.get(i).json();
      String at = "/" + i;
      Optional<Result<Reading>> own =
          documents.get(i).lost().isEmpty() ? own(json) : Optional.empty();
      if (own.isPresent() && own.get() instanceof Result.Ok<Reading> ok) {
        readings.add(ok.value().within(at));
        others.add(Raw.Obj.EMPTY);
      } else {
        others.add(json);
        strangers.addAll(strangers(at, own));
      }
      documents
          .get(i)
          .lost()
          .forEach(leaf -> lost.add(new PlacedLeaf(at + leaf.at(), leaf.value())));
    }
    if (readings.size() < documents.size() || documents.isEmpty()) {
      Document document = Document.of(others, readings.isEmpty()).with(lost);
      readings.add(foreign(document).with(strangers));
    }
    return Reading.together(readings);
  }

  private static List<Reading.Stranger> strangers(String at, Optional<Result<Reading>> own) {
    return own.map(read -> List.of(new Reading.Stranger(at, read.faults()))).orElse(List.of());
  }

  /** Reads the records of ours among the resources as they were written, the others by rules. */
  private Reading foreign(Document document) {
    boolean maybe =
        document.parts().stream().anyMatch(part -> WrittenName.of(part.resource()).isPresent());
    if (!maybe) {
      return byRules(document);
    }
    ReturnedRecords own = new ReturnedRecords(exact, codes.get(), document);
    List<ReturnedRecords.Read> ours = own.read();
    Set<Document.Part> read = new HashSet<>(own.apart().keySet());
    ours.forEach(one -> read.addAll(one.parts().keySet()));
    if (read.isEmpty()) {
      return byRules(document);
    }
    Reading others = byRules(document.without(read)).carryingToo(own.keptApart());
    return joined(document, ours, own.apart(), others);
  }

  /** What no other examination carries goes along with the first of ours. */
  private static Reading joined(
      Document document,
      List<ReturnedRecords.Read> ours,
      Map<Document.Part, Reason> apart,
      Reading others) {
    List<ReadExam> exams = new ArrayList<>();
    Map<String, ResourceOutcome> outcome = new HashMap<>();
    apart.forEach((part, why) -> outcome.put(part.at(), ReturnedRecords.outcome(why)));
    Carried rest = others.carried();
    for (ReturnedRecords.Read one : ours) {
      boolean first = exams.isEmpty();
      exams.add(one.exam(first ? rest.frame() : List.of(), first ? rest.resources() : List.of()));
      one.outcome().forEach((part, what) -> outcome.put(part.at(), what));
    }
    exams.addAll(others.exams());
    others.resources().forEach(resource -> outcome.put(resource.at(), resource.outcome()));
    List<ReadResource> resources = new ArrayList<>();
    Set<String> places = new HashSet<>();
    for (Document.Part part : document.parts()) {
      places.add(part.at());
      resources.add(
          new ReadResource(
              part.at(),
              part.resource(),
              Objects.requireNonNull(outcome.get(part.at()), part.at())));
    }
    others.resources().stream()
        .filter(resource -> !places.contains(resource.at()))
        .forEach(resources::add);
    return Reading.of(exams, resources, ours.isEmpty() ? rest : Carried.NOTHING)
        .with(others.strangers());
  }

  private Reading byRules(Document given) {
    Neighbours neighbours = given.neighbours();
    FormsOfOthers forms = new FormsOfOthers(vocabulary.get(), options, neighbours, given);
    Document document = forms.answered(given);
    List<Document.Part> parts = document.parts();
    Holders holders = Holders.of(given.parts(), neighbours, vocabulary.get().habits());
    List<Translation> translations =
        (parts.size() < MANY ? parts.stream() : parts.parallelStream())
            .map(part -> translate(part, neighbours, holders, forms))
            .toList();
    Set<Document.Part> compared = new HashSet<>();
    for (int i = 0; i < parts.size(); i++) {
      if (translations.get(i).head().isPresent()) {
        compared.add(parts.get(i));
      }
    }
    Map<Integer, Reason> superseded =
        Versions.of(
                parts,
                part -> compared.contains(part) ? Versions.names(part.resource()) : List.of())
            .superseded();
    List<Translation> joined =
        new Joining(vocabulary.get(), options, document).joined(translations, superseded.keySet());
    return new Assembly(options, document, joined, superseded).reading();
  }

  private Translation translate(
      Document.Part part, Neighbours neighbours, Holders holders, FormsOfOthers forms) {
    String type = Neighbours.type(part.resource());
    if (part.keptBefore().isPresent()) {
      return kept(part, Why.of(part.keptBefore().get()), Why.KEPT_BEFORE, "");
    }
    if (FormAnswers.isOurs(part.resource())) {
      return form.get().read(part.resource(), neighbours);
    }
    if (type.equals("Observation")) {
      Translation read =
          Translator.of(
              vocabulary.get(), options, neighbours, part.resource(), holders.reportOf(part));
      boolean taken = !read.facts().isEmpty() || read.piece().isPresent();
      Optional<String> doubt =
          taken
              ? holders
                  .doubtOf(part)
                  .or(() -> part.madeOf().flatMap(holders::doubtOf))
                  .or(() -> holders.otherEyeOf(part, read.facts()))
              : Optional.empty();
      if (doubt.isPresent()) {
        return kept(part, Why.UNREAD_QUALIFIER, doubt.get(), "what was found in this examination");
      }
      if (taken) {
        options.aliases().usedIn(part.resource()).forEach(read.ledger()::used);
        return read;
      }
      return holder(part).orElse(read);
    }
    Optional<Translation> holder = holder(part);
    if (holder.isPresent()) {
      return holder.get();
    }
    if (FormsOfOthers.isResponse(part)) {
      Optional<Reason> reason = forms.reason(part);
      if (reason.isPresent()) {
        return Translation.kept(new Ledger(part.resource()), List.of(reason.get()));
      }
    }
    Why why = type.equals("VisionPrescription") ? Why.ORDER : Why.OTHER_RESOURCE;
    return kept(part, why, type, "an Observation");
  }

  /** Returns that a resource was kept for the observations in it; nothing where it has none. */
  private static Optional<Translation> holder(Document.Part part) {
    long inside = observations(part.resource()) - (isObservation(part.resource()) ? 1 : 0);
    if (inside == 0) {
      return Optional.empty();
    }
    String seen = Neighbours.type(part.resource()) + " with observations inside: " + inside;
    return Optional.of(
        kept(part, Why.OBSERVATIONS_INSIDE, seen, "each of them as a resource of its own"));
  }

  /** Counts the observations in a value, itself included. */
  private static long observations(Raw value) {
    long count = isObservation(value) ? 1 : 0;
    Collection<Raw> inner =
        value instanceof Raw.Obj object
            ? object.members().values()
            : value instanceof Raw.Arr list ? list.items() : List.of();
    for (Raw each : inner) {
      count += observations(each);
    }
    return count;
  }

  private static boolean isObservation(Raw value) {
    return Neighbours.type(value).equals("Observation");
  }

  private static Translation kept(Document.Part part, Why why, String seen, String wanted) {
    Reason reason = new Reason(why, Fault.of("", seen, wanted));
    return Translation.kept(new Ledger(part.resource()), List.of(reason));
  }

  /** When a report was given out is in no record, and goes along beside it. */
  private static boolean isGivenOut(Raw.Obj bundle) {
    return bundle.objects("entry").stream()
        .flatMap(entry -> entry.object("resource").stream())
        .filter(resource -> Neighbours.type(resource).equals("DiagnosticReport"))
        .anyMatch(report -> report.get("issued").isPresent());
  }

  /** Reads a bundle that holds our panel, with what was carried along taken out first. */
  private Optional<Result<Reading>> own(Raw json) {
    if (!Neighbours.type(json).equals("Bundle")
        || !ReturnedBundle.isBundle((Raw.Obj) json)
        || isGivenOut((Raw.Obj) json)) {
      return Optional.empty();
    }
    ReturnedBundle own = ReturnedBundle.of((Raw.Obj) json);
    return Optional.of(exact.take(RawTokens.of(own.bundle())).map(own::reading));
  }
}
