package org.lehrcase.bench.store;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.lehrcase.core.file.OwnerOnly;

/**
 * The student's database with its tables. The file lies in the data folder, readable by its owner
 * only where the system knows such rights.
 */
public final class StudyStore implements Closeable {
  private static final String FILE = "study.db";

  private final Database database;
  private final LaptopTable laptop;
  private final PlaceTable places;
  private final MoveTable moves;
  private final GivenBackTable givenBack;
  private final ClosingTable closing;
  private final LicenseTable licenses;
  private final RootTable roots;
  private final EditionTable editions;
  private final PositionTable positions;
  private final SettingTable settings;
  private final PieceTable pieces;
  private final PieceFollowTable following;
  private final SupplyTable supplies;
  private final CorrectionTable corrections;
  private final OwnFiguresTable ownFigures;
  private final FiringLogTable firings;
  private final FiringPhotoTable firingPhotos;
  private final Notebooks notebooks;
  private final PlanTable plans;
  private final OwnPictureTable ownPictures;

  private StudyStore(Database database, Clock clock) {
    this.database = database;
    this.laptop = new LaptopTable(database, clock);
    this.places = new PlaceTable(database, clock);
    this.moves = new MoveTable(database, clock);
    this.givenBack = new GivenBackTable(database, clock);
    this.closing = new ClosingTable(database, clock);
    this.licenses = new LicenseTable(database, clock);
    this.roots = new RootTable(database, clock);
    this.editions = new EditionTable(database, clock);
    this.positions = new PositionTable(database, clock);
    this.settings = new SettingTable(database);
    this.pieces = new PieceTable(database, clock);
    this.following = new PieceFollowTable(database, clock);
    this.supplies = new SupplyTable(database, clock);
    this.corrections = new CorrectionTable(database, clock);
    this.ownFigures = new OwnFiguresTable(database, clock);
    this.firings = new FiringLogTable(database, clock);
    this.firingPhotos = new FiringPhotoTable(database, clock);
    this.notebooks = new Notebooks(database, clock);
    this.plans = new PlanTable(database, clock);
    this.ownPictures = new OwnPictureTable(database, clock);
  }

  /**
   * Opens or creates the database in a data folder.
   *
   * @param home the data folder; it exists
   * @param clock gives the time of every entry
   * @return the open store; the caller closes it
   * @throws IOException if the file cannot be made or read
   */
  public static StudyStore open(Path home, Clock clock) throws IOException {
    Path file = home.resolve(FILE);
    if (!Files.exists(file)) {
      Files.createFile(file, OwnerOnly.file(file));
    }
    return new StudyStore(Database.open(file), clock);
  }

  /**
   * Runs several changes as one.
   *
   * @param work the changes
   * @return what the work returned
   * @throws StoreException if nothing could be written
   */
  public <T> T inTransaction(Database.Work<T> work) throws StoreException {
    return database.inTransaction(work);
  }

  /**
   * Returns the wraps of the laptop's secret.
   *
   * @return the table
   */
  public LaptopTable laptop() {
    return laptop;
  }

  /**
   * Returns the cards and what came of them.
   *
   * @return the table
   */
  public PlaceTable places() {
    return places;
  }

  /**
   * Returns the asks, and how places came or went.
   *
   * @return the table
   */
  public MoveTable moves() {
    return moves;
  }

  /**
   * Returns the places that were given back.
   *
   * @return the table
   */
  public GivenBackTable givenBack() {
    return givenBack;
  }

  /**
   * Returns the keys of shops that closed.
   *
   * @return the table
   */
  public ClosingTable closing() {
    return closing;
  }

  /**
   * Returns the accepted licenses.
   *
   * @return the table
   */
  public LicenseTable licenses() {
    return licenses;
  }

  /**
   * Returns the teachers' roots.
   *
   * @return the table
   */
  public RootTable roots() {
    return roots;
  }

  /**
   * Returns the known editions.
   *
   * @return the table
   */
  public EditionTable editions() {
    return editions;
  }

  /**
   * Returns the positions.
   *
   * @return the table
   */
  public PositionTable positions() {
    return positions;
  }

  /**
   * Returns the settings.
   *
   * @return the table
   */
  public SettingTable settings() {
    return settings;
  }

  /**
   * Returns the student's pieces.
   *
   * @return the table
   */
  public PieceTable pieces() {
    return pieces;
  }

  /**
   * Returns plans, sheets and pictures of the pieces.
   *
   * @return the tables
   */
  public PieceFollowTable following() {
    return following;
  }

  /**
   * Returns what is in the drawer.
   *
   * @return the table
   */
  public SupplyTable supplies() {
    return supplies;
  }

  /**
   * Returns the corrections that came by themselves.
   *
   * @return the table
   */
  public CorrectionTable corrections() {
    return corrections;
  }

  /**
   * Returns the student's kilns, glasses and blocks.
   *
   * @return the table
   */
  public OwnFiguresTable ownFigures() {
    return ownFigures;
  }

  /**
   * Returns the pictures of firings.
   *
   * @return the table
   */
  public FiringPhotoTable firingPhotos() {
    return firingPhotos;
  }

  /**
   * Returns the log of firings.
   *
   * @return the table
   */
  public FiringLogTable firings() {
    return firings;
  }

  /**
   * Returns notebooks, notes, their pictures, and timers.
   *
   * @return the tables
   */
  public Notebooks notebooks() {
    return notebooks;
  }

  /**
   * Returns the student's plans of sheets.
   *
   * @return the table
   */
  public PlanTable plans() {
    return plans;
  }

  /**
   * Returns the pictures that plans are drawn on.
   *
   * @return the table
   */
  public OwnPictureTable ownPictures() {
    return ownPictures;
  }

  @Override
  public void close() throws StoreException {
    database.close();
  }
}
