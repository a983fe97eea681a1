package org.isopter.mapper.record.schema;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import org.isopter.mapper.record.RecordReader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Fault;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The JSON Schema (2020-12) of a record: the published contract that programs in any language can
 * check a record with.
 *
 * <p>It is generated from the catalogue. {@link RecordReader} does not use it: it checks more, such
 * as ranges of numbers with a unit, and says it better. Whatever the reader accepts the schema
 * accepts, so that whatever the schema refuses the reader refuses.
 */
public final class RecordSchema {

  /** The name of the schema, as an address; nothing has to be served there. */
  public static final String ID = "https://w3id.org/isopter/schema/record.json";

  private final Schema schema;

  /** Makes a check against the schema of a catalogue. */
  public RecordSchema(Catalogue catalogue) {
    this.schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(of(catalogue));
  }

  /** Returns the schema of a catalogue. */
  public static ObjectNode of(Catalogue catalogue) {
    return SchemaTree.of(catalogue, ID);
  }

  /** Returns everything in a tree that the schema refuses; paths are keys without line numbers. */
  public List<Fault> check(JsonNode tree) {
    return schema.validate(tree).stream().map(RecordSchema::fault).toList();
  }

  private static Fault fault(Error error) {
    return SchemaFault.of(error);
  }
}
