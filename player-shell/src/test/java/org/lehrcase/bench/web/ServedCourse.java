package org.lehrcase.bench.web;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.security.SecureRandom;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/** A bench behind its real server, and a client that has entered; closes both. */
final class ServedCourse implements AutoCloseable {
  final Bench bench;
  final EnteredClient page;
  private final BenchRooms rooms;

  private ServedCourse(Bench bench, BenchRooms rooms) throws IOException {
    this.bench = bench;
    this.rooms = rooms;
    this.page = EnteredClient.enter(rooms.server());
  }

  static ServedCourse of(Bench bench) throws IOException {
    return new ServedCourse(
        bench,
        BenchRooms.open(bench, new BenchRooms.Service(0, "0.1.0", () -> {}), new SecureRandom()));
  }

  static JsonObject json(RawClient.Answer answer) {
    return JsonParser.parseString(answer.text()).getAsJsonObject();
  }

  JsonObject state() throws IOException {
    return json(page.get("api/state"));
  }

  RawClient.Answer media(EditionId edition, Asset asset) throws IOException {
    return page.get("media/" + edition + "/" + asset.id());
  }

  RawClient.Answer print(EditionId edition, Asset asset) throws IOException {
    return page.get("print/" + edition + "/" + asset.id());
  }

  RawClient.Answer lesson(EditionId edition, LessonId lesson) throws IOException {
    return page.get("api/lesson?e=" + edition + "&l=" + lesson);
  }

  @Override
  public void close() throws IOException {
    rooms.close();
    bench.close();
  }
}
