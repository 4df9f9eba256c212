package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.TreeMap;

/** Folders of this computer to choose from, since a browser does not tell where a folder lies. */
final class FolderList {
  private static final int MOST = 500;

  JsonObject answer(String at) throws IOException {
    Path folder = start(at);
    TreeMap<String, Path> inside = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
    boolean course = false;
    try (DirectoryStream<Path> all = Files.newDirectoryStream(folder)) {
      for (Path one : all) {
        String name = one.getFileName().toString();
        course |= name.equals("course.yaml") || name.matches("\\d+ .*");
        if (inside.size() < MOST && !name.startsWith(".") && Files.isDirectory(one)) {
          inside.put(name, one);
        }
      }
    }
    JsonArray folders = new JsonArray();
    inside.forEach(
        (name, path) -> {
          JsonObject one = new JsonObject();
          one.addProperty("name", name);
          one.addProperty("path", path.toString());
          folders.add(one);
        });
    JsonObject answer = new JsonObject();
    answer.addProperty("at", folder.toString());
    Path parent = folder.getParent();
    answer.addProperty("up", parent == null ? "" : parent.toString());
    answer.addProperty("course", course);
    answer.add("folders", folders);
    return answer;
  }

  private static Path start(String at) {
    Path home = Path.of(System.getProperty("user.home", "/"));
    try {
      Path wanted = Path.of(at);
      return !at.isBlank() && wanted.isAbsolute() && Files.isDirectory(wanted)
          ? wanted.normalize()
          : home;
    } catch (InvalidPathException e) {
      return home;
    }
  }
}
