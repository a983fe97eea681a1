package org.isopter.mapper.pool;

/**
 * A document to be pooled.
 *
 * @param source what the tables call its input
 * @param line its line in the input, from 1; 0 where the input is one document
 * @param group what it belongs to: bare resources of one group may refer to each other
 * @param form how it is written down
 * @param bytes the document
 */
@SuppressWarnings("ArrayRecordComponent") // Handed on once, never compared.
public record PoolDocument(String source, long line, String group, Form form, byte[] bytes) {

  /** How a document is written down. */
  public enum Form {
    /** A record or FHIR, whichever it is. */
    JSON,
    /** A record. */
    YAML,
    /** FHIR. */
    XML
  }
}
