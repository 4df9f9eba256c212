package org.lehrcase.desk.web;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.BenchServer;
import org.lehrcase.bench.web.House;
import org.lehrcase.bench.web.Jobs;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.primitive.Argon2id;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.sales.BookCheck;

/** A desk with its page: the one entry of this package. */
public final class DeskRooms implements AutoCloseable {
  private static final House HOUSE =
      House.withPages(
          "/desk-ui/",
          "Opening your desk",
          "Your sales book and your courses are safe.",
          "Start the desk again with its command or icon; the page comes by itself.");

  private final OpenDesk desk;
  private final Jobs jobs;
  private final BenchServer server;

  private DeskRooms(OpenDesk desk, Jobs jobs, BenchServer server) {
    this.desk = desk;
    this.jobs = jobs;
    this.server = server;
  }

  /**
   * How to serve.
   *
   * @param port the port, or 0 for any free one
   * @param clock gives days and times
   * @param random the source of identifiers, salts and the secrets of this start
   * @param cost how slow guessing a new passphrase is made
   * @param quit called when the page asks to end the program
   */
  public record Service(
      int port, Clock clock, SecureRandom random, Argon2id.Cost cost, Runnable quit) {}

  /**
   * Starts the page of a desk.
   *
   * @param home the open home; the caller closes it after this
   * @param passphrase opens the keys at once; without it the page asks
   * @param service how to serve
   * @return the running server; the caller closes it
   * @throws DeskHomeException if the passphrase does not open the desk
   * @throws IOException if the port is taken
   */
  public static DeskRooms open(DeskHome home, Optional<Passphrase> passphrase, Service service)
      throws IOException, DeskHomeException {
    OpenDesk desk = new OpenDesk(home, service.random(), service.cost());
    if (passphrase.isPresent()) {
      desk.unlock(passphrase.get());
    }
    Jobs jobs = new Jobs();
    JsonApi api = new JsonApi();
    api.on("GET desk", ask -> about(desk));
    api.on("POST unlock", ask -> unlock(desk, ask));
    api.on(
        "POST quit",
        ask -> {
          service.quit().run();
          return new JsonObject();
        });
    api.onEach("GET jobs/*", (id, ask) -> jobs.answer(id));
    api.onEach("POST jobs/*/stop", (id, ask) -> jobs.stop(id));
    new LaptopQuestions(desk).addTo(api);
    new PeopleQuestions(desk).addTo(api);
    new ActQuestions(desk).addTo(api);
    new ImportQuestions(desk).addTo(api);
    new CourseQuestions(desk, jobs, service.clock()).addTo(api);
    new CorrectionQuestions(desk, service.clock()).addTo(api);
    new BookQuestions(desk).addTo(api);
    new ClosingQuestions(desk).addTo(api);
    new SafeQuestions(desk, service.clock()).addTo(api);
    return new DeskRooms(
        desk, jobs, BenchServer.startPages(service.port(), service.random(), api, HOUSE));
  }

  /** While the keys are shut nothing is said about what was sold. */
  private static JsonObject about(OpenDesk desk) throws IOException {
    JsonObject about = new JsonObject();
    about.addProperty("shop", desk.shop());
    about.add("words", Json.tree(desk.home().statement().words()));
    about.addProperty("unlocked", desk.isUnlocked());
    if (desk.isUnlocked()) {
      BookCheck check = desk.book().check(desk.keysIfOpen().map(DeskHome::seal));
      about.addProperty("events", check.events());
      about.addProperty("signedUpTo", check.signedUpTo());
      about.add("breaks", Json.tree(check.breaks()));
      about.addProperty("people", desk.book().people().count());
    }
    return about;
  }

  private static JsonObject unlock(OpenDesk desk, Ask ask) throws Trouble, IOException {
    try (Passphrase passphrase = OpenDesk.passphrase(ask.file())) {
      desk.unlock(passphrase);
    } catch (DeskHomeException.WrongPassphrase e) {
      throw new Trouble(
          TroubleCode.LOCKED,
          "The passphrase does not open this desk.",
          "Try again, and mind capital letters and the keyboard's language.");
    } catch (DeskHomeException e) {
      throw OpenDesk.refused(e);
    }
    return about(desk);
  }

  /**
   * Returns the running server.
   *
   * @return the server
   */
  public BenchServer server() {
    return server;
  }

  @Override
  public void close() {
    jobs.close();
    server.close();
    desk.close();
  }
}
