package org.lehrcase.bench.web;

import java.security.SecureRandom;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.ConnectionLimit;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The running loopback server of one start. */
public final class BenchServer implements AutoCloseable {
  private static final int MAX_THREADS = 16;
  private static final int MIN_THREADS = 4;
  private static final int SELECTORS = 2;
  private static final int HEADER_BYTES = 8 << 10;
  private static final int MAX_CONNECTIONS = 64;
  private static final long IDLE_MILLIS = 120_000;

  /** Room for sixteen segments, so that one is opened while others are still on their way. */
  private static final int SEND_BUFFER_BYTES = 1 << 20;

  private static final String LOOPBACK = "127.0.0.1";

  private final Server server;
  private final ServerConnector connector;
  private final Session session;

  private BenchServer(Server server, ServerConnector connector, Session session) {
    this.server = server;
    this.connector = connector;
    this.session = session;
  }

  /**
   * Starts a server on the loopback address.
   *
   * @param port the port, or 0 for any free one
   * @param random makes the secrets of this start
   * @param rooms what lies behind the guard
   * @return the running server; the caller closes it
   * @throws java.io.IOException if the port is taken
   */
  static BenchServer start(int port, SecureRandom random, Router.Rooms rooms)
      throws java.io.IOException {
    QueuedThreadPool pool = new QueuedThreadPool(MAX_THREADS, MIN_THREADS);
    pool.setName("bench");
    Server server = new Server(pool);
    ServerConnector connector =
        new ServerConnector(server, 1, SELECTORS, new HttpConnectionFactory(configuration()));
    connector.setHost(LOOPBACK);
    connector.setPort(port);
    connector.setIdleTimeout(IDLE_MILLIS);
    connector.setAcceptedSendBufferSize(SEND_BUFFER_BYTES);
    server.addConnector(connector);
    server.addBean(new ConnectionLimit(MAX_CONNECTIONS, connector));
    server.setErrorHandler(BenchServer::plainError);
    connector.open();
    Session session = Session.start(random);
    server.setHandler(new Router(new Guard(connector.getLocalPort(), session), session, rooms));
    return started(new BenchServer(server, connector, session));
  }

  /**
   * Starts a server with pages and questions, and no media, behind the same guard.
   *
   * @param port the port, or 0 for any free one
   * @param random makes the secrets of this start
   * @param api what the pages ask
   * @param house whose pages they are
   * @return the running server; the caller closes it
   * @throws java.io.IOException if the port is taken
   */
  public static BenchServer startPages(int port, SecureRandom random, JsonApi api, House house)
      throws java.io.IOException {
    return start(
        port,
        random,
        new Router.Rooms(api, new MediaHandler(NoMedia.NONE), NoMedia.NO_PAPERS, house));
  }

  private static BenchServer started(BenchServer bench) throws java.io.IOException {
    try {
      bench.server.start();
      return bench;
    } catch (java.io.IOException e) {
      bench.connector.close();
      throw e;
    } catch (Exception e) { // the server library declares nothing narrower
      bench.connector.close();
      throw new java.io.IOException("the local server did not start", e);
    }
  }

  private static HttpConfiguration configuration() {
    HttpConfiguration configuration = new HttpConfiguration();
    configuration.setSendServerVersion(false);
    configuration.setSendXPoweredBy(false);
    configuration.setRequestHeaderSize(HEADER_BYTES);
    configuration.setResponseHeaderSize(HEADER_BYTES);
    return configuration;
  }

  /** What the server library itself refuses gets a status and no words. */
  private static boolean plainError(Request request, Response response, Callback callback) {
    SecurityHeaders.addTo(response.getHeaders());
    response.getHeaders().put(HttpHeader.CONTENT_LENGTH, 0);
    Replies.empty(response, callback, response.getStatus() == 0 ? 500 : response.getStatus());
    return true;
  }

  /**
   * Returns the port that was bound.
   *
   * @return the port
   */
  public int port() {
    return connector.getLocalPort();
  }

  /**
   * Makes a one-time address by which a browser gets in.
   *
   * @return an address that works once
   */
  public String entryAddress() {
    return "http://" + LOOPBACK + ":" + port() + Guard.ENTER + session.issueToken();
  }

  /**
   * Returns the word by which a second start asks for a one-time address.
   *
   * @return the word, to be kept in a file that only the user can read
   */
  public String knockWord() {
    return session.knock();
  }

  @Override
  public void close() {
    try {
      server.stop();
    } catch (Exception e) { // the server library declares nothing narrower
      throw new IllegalStateException("the local server did not stop", e);
    }
  }
}
