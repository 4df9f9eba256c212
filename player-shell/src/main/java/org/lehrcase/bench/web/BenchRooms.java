package org.lehrcase.bench.web;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.find.CorrectionPassages;
import org.lehrcase.bench.find.FindSource;
import org.lehrcase.bench.find.Finder;
import org.lehrcase.bench.find.NotePassages;
import org.lehrcase.bench.help.HelpSlips;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.kilns.FiringWarmup;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/** A bench with its server: the one entry of this package. */
public final class BenchRooms implements AutoCloseable {
  private final BenchServer server;
  private final Jobs jobs;
  private final Finder finder;

  private BenchRooms(BenchServer server, Jobs jobs, Finder finder) {
    this.server = server;
    this.jobs = jobs;
    this.finder = finder;
  }

  /**
   * How to serve.
   *
   * @param port the port, or 0 for any free one
   * @param version the program's version, for the page
   * @param quit called when the page asks to end the program
   */
  public record Service(int port, String version, Runnable quit) {}

  /**
   * Starts the server of a bench.
   *
   * @param bench the open bench; the caller closes it after this
   * @param service how to serve
   * @param random makes the secrets of this start
   * @return the running server; the caller closes it
   * @throws IOException if the port is taken
   */
  public static BenchRooms open(Bench bench, Service service, SecureRandom random)
      throws IOException {
    Jobs jobs = new Jobs();
    JsonApi api = new JsonApi();
    StateAnswer state = new StateAnswer(bench, service.version());
    api.on("GET state", ask -> state.answer());
    api.on(
        "POST quit",
        ask -> {
          service.quit().run();
          return new JsonObject();
        });
    new StudyQuestions(bench).addTo(api);
    new PieceQuestions(bench.store().pieces()).addTo(api);
    new PieceFollowQuestions(bench.store()).addTo(api);
    new NoteQuestions(bench.store().notebooks()).addTo(api);
    new TimerQuestions(bench.store().notebooks().timers(), Clock.systemUTC()).addTo(api);
    MadePapers papers = new MadePapers();
    new NotebookQuestions(bench.store().notebooks(), bench.courses(), papers).addTo(api);
    new NotebookCopyQuestions(bench).addTo(api);
    addKilnTo(api, bench, papers);
    new OpeningQuestions(bench, jobs).addTo(api);
    new CopyQuestions(bench, jobs).addTo(api);
    new MergeQuestions(bench, jobs).addTo(api);
    new MoveQuestions(bench).addTo(api);
    new GiveBackQuestions(bench).addTo(api);
    Finder finder = finder(bench);
    new FindQuestions(finder).addTo(api);
    HelpSlips slips = new HelpSlips(bench, service.version());
    new HelpQuestions(slips, Clock.systemDefaultZone()).addTo(api);
    MediaHandler media = new MediaHandler(new CourseMedia(bench.courses()));
    Router.Rooms rooms = new Router.Rooms(api, media, downloads(bench, papers));
    return new BenchRooms(BenchServer.start(service.port(), random, rooms), jobs, finder);
  }

  private static Finder finder(Bench bench) {
    FindSource corrections = new CorrectionPassages(bench.courses().corrections());
    FindSource notes = new NotePassages(bench.store().notebooks());
    return new Finder(bench.courses(), List.of(corrections, notes), Clock.systemUTC());
  }

  private static void addKilnTo(JsonApi api, Bench bench, MadePapers papers) {
    FiringWarmup.later();
    Clock clock = Clock.systemDefaultZone();
    new KilnQuestions(bench, clock).addTo(api);
    new SheetQuestions().addTo(api);
    new SheetPapers(bench, papers).addTo(api);
    new PlanQuestions(bench.store(), papers).addTo(api);
    new PictureQuestions(bench.store()).addTo(api);
    new SupplyQuestions(bench.store().supplies()).addTo(api);
    new SlipQuestions(bench, papers, clock).addTo(api);
    new KilnPapers(papers, clock).addTo(api);
    new OwnFigureQuestions(bench.store().ownFigures()).addTo(api);
    new FiringLogQuestions(bench.store(), papers, clock).addTo(api);
  }

  private static Downloads downloads(Bench bench, MadePapers papers) {
    Downloads own =
        new NotePictures(bench.store().notebooks().pictures(), new PrintDownloads(bench));
    return new MadeDownloads(papers, bench.store(), own);
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
    finder.close();
  }

  private record CourseMedia(Courses courses) implements MediaFinder {
    @Override
    public CourseFile find(EditionId edition, AssetId asset)
        throws Trouble, VaultException, IOException {
      return courses.file(edition, asset);
    }

    @Override
    public Optional<CourseFile> ifOpen(EditionId edition, AssetId asset) {
      return courses.ifOpen(edition, asset);
    }
  }
}
