package org.isopter.server;

import org.springframework.boot.SpringApplication;

/** Runs the server until it is stopped, to be tried by hand; all that it holds is gone then. */
final class ServeMain {

  private ServeMain() {}

  public static void main(String[] args) {
    SpringApplication.run(PlainServer.class, args);
  }
}
