package org.isopter.mapper.record;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.isopter.mapper.record.tree.Complaints;
import org.isopter.mapper.record.tree.JsonTree;
import org.isopter.mapper.record.tree.Limits;
import org.isopter.mapper.record.tree.Node;
import org.isopter.mapper.record.tree.PlainTree;
import org.isopter.mapper.record.tree.YamlTree;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;
import org.isopter.model.value.Result;

/**
 * Reads records: an examination from JSON or YAML, or every fault in the text, each with line,
 * column and path, in the order of the text.
 *
 * <p>Safe for use by several threads.
 */
public final class RecordReader {

  private final Catalogue catalogue;

  /**
   * Makes a reader of the findings of a catalogue.
   *
   * @throws IllegalArgumentException when a finding has a part whose key a record needs for itself
   */
  public RecordReader(Catalogue catalogue) {
    this.catalogue = catalogue;
    catalogue.all().forEach(RecordReader::requireFreeKeys);
  }

  /** Reads a record from bytes; anything but UTF-8 is refused. */
  public Result<Exam> read(byte[] utf8, RecordFormat format) {
    try {
      return read(UTF_8.newDecoder().decode(ByteBuffer.wrap(utf8)).toString(), format);
    } catch (CharacterCodingException e) {
      return Result.refused(
          new Fault("", "bytes that are no UTF-8", "a text in UTF-8", "save the file as UTF-8"));
    }
  }

  /** Reads a record from text. */
  public Result<Exam> read(String text, RecordFormat format) {
    return read(text, complaints -> tree(text, format, complaints));
  }

  /**
   * Reads a record in JSON without a library, for instance in a browser. What the other readers
   * take it takes the same; a text that is no JSON at all it may refuse in other words.
   */
  public Result<Exam> readPlain(String text) {
    return read(text, complaints -> Optional.of(PlainTree.read(bare(text), complaints)));
  }

  private Result<Exam> read(String text, Function<Complaints, Optional<Node>> parser) {
    if (text.length() > Limits.LENGTH) {
      return Result.refused(
          Fault.of("", text.length() + " characters", "a record of at most " + Limits.LENGTH));
    }
    Complaints complaints = new Complaints();
    try {
      return parser
          .apply(complaints)
          .flatMap(node -> exam(node, complaints))
          .<Result<Exam>>map(Result::ok)
          .orElseGet(() -> Result.refused(complaints.faults()));
    } catch (FaultException beyondLimits) {
      return Result.refused(beyondLimits.faults());
    }
  }

  private static Optional<Node> tree(String text, RecordFormat format, Complaints complaints) {
    String plain = bare(text);
    return format == RecordFormat.JSON
        ? JsonTree.read(plain, complaints)
        : YamlTree.read(plain, complaints);
  }

  private static String bare(String text) {
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }

  private Optional<Exam> exam(Node node, Complaints complaints) {
    if (!(node instanceof Node.Tree tree)) {
      return complaints.add(node, "a record: isopter, record, subject, performed, …", "");
    }
    Scalars scalars = new Scalars(complaints);
    Optional<Header> header = new HeaderReader(tree, catalogue, scalars, complaints).read();
    List<Fact<?>> facts = new FindingsReader(catalogue, scalars, complaints).read(tree);
    return header.filter(read -> complaints.isEmpty()).map(read -> new Exam(read, facts));
  }

  private static void requireFreeKeys(Finding<?> finding) {
    Set<String> taken = new HashSet<>(Keys.OF_AN_ENTRY);
    for (Part<?, ?> part : finding.layout().commonParts()) {
      if (!taken.add(part.key())) {
        throw new IllegalArgumentException(
            finding.id() + " may not have a part " + part.key() + ": records use that key");
      }
    }
  }
}
