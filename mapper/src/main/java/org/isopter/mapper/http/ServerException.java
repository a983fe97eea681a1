package org.isopter.mapper.http;

import java.net.URI;
import org.isopter.model.value.Fault;

/** A request to a server did not do what it was for; the fault says where, and what to do. */
public final class ServerException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient Fault fault;
  private final int status;

  private ServerException(Fault fault, int status) {
    super(fault.toString());
    this.fault = fault;
    this.status = status;
  }

  /** Returns one for what would meet every further request too, so that going on makes no sense. */
  public static ServerException ofAll(Fault fault) {
    return new ServerException(fault, 0);
  }

  /** Returns one for what a server answered to one request. */
  public static ServerException ofOne(Fault fault, int status) {
    return new ServerException(fault, status);
  }

  /** Returns an address as a message shows it: without the query, which may name a person. */
  public static String shown(URI uri) {
    String text = uri.toString();
    int query = text.indexOf('?');
    return query < 0 ? text : text.substring(0, query) + "?…";
  }

  /** Returns where, what was seen, what was wanted, and what to do. */
  public Fault fault() {
    return fault;
  }

  /** Returns the HTTP status that was answered; 0 where every further request would fail too. */
  public int status() {
    return status;
  }

  /** Says whether every further request would fail too. */
  public boolean isOfAll() {
    return status == 0;
  }
}
