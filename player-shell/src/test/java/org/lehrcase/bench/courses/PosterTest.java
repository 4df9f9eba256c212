package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.SecureRandom;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;

class PosterTest {
  private static final SecureRandom RANDOM = new SecureRandom();

  private static Asset file(AssetRole role, String name, String mediaType) {
    List<PartRef> parts =
        List.of(new PartRef(PartAddress.ofHex("ab".repeat(32)), PartKey.random(RANDOM)));
    return new Asset(
        AssetId.random(RANDOM), role, Rendition.COMMON, name, mediaType, "", 10, parts);
  }

  private static Lesson lesson(String... images) {
    Stream<Asset> pictures = Stream.of(images).map(i -> file(AssetRole.IMAGE, i, "image/png"));
    List<Asset> assets =
        Stream.concat(Stream.of(file(AssetRole.VIDEO, "Wash.mp4", "video/mp4")), pictures).toList();
    return new Lesson(
        LessonId.random(RANDOM), 1, 1, "Wash", "", false, assets, List.of(), Optional.empty());
  }

  private static String poster(Lesson lesson) {
    return Poster.of(lesson, asset -> true).map(Asset::name).orElse("none");
  }

  @Test
  void aPictureCalledPosterComesFirst() {
    assertThat(poster(lesson("chart.png", "wash.png", "Poster.png"))).isEqualTo("Poster.png");
  }

  @Test
  void thenOneNamedLikeTheFilm() {
    assertThat(poster(lesson("chart.png", "wash.png"))).isEqualTo("wash.png");
  }

  @Test
  void thenTheFirst() {
    assertThat(poster(lesson("chart.png", "detail.png"))).isEqualTo("chart.png");
    assertThat(poster(lesson())).isEqualTo("none");
  }

  @Test
  void whatIsNotInThisCopyIsPassedBy() {
    Lesson lesson = lesson("chart.png", "poster.png");
    assertThat(Poster.of(lesson, asset -> !asset.name().equals("poster.png")).orElseThrow().name())
        .isEqualTo("chart.png");
  }
}
