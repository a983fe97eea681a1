package org.isopter.spark;

import java.util.List;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.Metadata;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;
import org.isopter.mapper.table.Column;
import org.isopter.mapper.table.Kind;
import org.isopter.mapper.table.Table;

/** The schema of a table, from its columns. */
final class Schemas {

  private Schemas() {}

  /** Returns the schema; what a column means is its comment. */
  static StructType of(Table<?> table) {
    List<StructField> fields = table.columns().stream().<StructField>map(Schemas::field).toList();
    return new StructType(fields.toArray(new StructField[0]));
  }

  private static StructField field(Column<?> column) {
    return new StructField(column.name(), type(column.kind()), true, Metadata.empty())
        .withComment(column.meaning());
  }

  private static DataType type(Kind kind) {
    return switch (kind) {
      case TEXT -> DataTypes.StringType;
      case NUMBER -> DataTypes.DoubleType;
      case INTEGER -> DataTypes.LongType;
      case TRUTH -> DataTypes.BooleanType;
      case TIME -> DataTypes.TimestampNTZType;
    };
  }
}
