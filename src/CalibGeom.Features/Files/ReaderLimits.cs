namespace CalibGeom.Features.Files;

/// <summary>
/// What readers take at most. More is refused in words before memory is taken for it; <c>docs/limits.md</c> has the
/// table.
/// </summary>
public static class ReaderLimits
{
    /// <summary>A spec or an object file, bytes.</summary>
    public const int SpecBytes = 1 << 20;

    /// <summary>A feature table, bytes.</summary>
    public const int FeatureTableBytes = 16 << 20;

    /// <summary>A readings file, bytes.</summary>
    public const int ReadingsBytes = 16 << 20;

    /// <summary>Readings in a file.</summary>
    public const int Readings = 100_000;

    /// <summary>Lines that cannot be read and are told one by one; the others are counted.</summary>
    public const int ProblemsTold = 20;

    /// <summary>A caliper record, bytes.</summary>
    public const int CaliperRecordBytes = 4_000_000;

    /// <summary>A line of a log, bytes.</summary>
    public const int LogLineBytes = 1 << 20;

    /// <summary>Lines of a log.</summary>
    public const int LogLines = 100_000;

    /// <summary>A line of a family's journal, characters.</summary>
    public const int FamilyJournalLineCharacters = 1 << 16;

    /// <summary>Lines of a family's journal: ten runs of the largest family.</summary>
    public const int FamilyJournalLines = 10_000_000;

    /// <summary>What is piped in where a file could be named, bytes.</summary>
    public const long PipedBytes = 4L << 30;

    /// <summary>A line of an ASCII STL or OBJ, bytes.</summary>
    public const int MeshLineBytes = 1 << 24;

    /// <summary>Corners of a face of an OBJ.</summary>
    public const int FaceCorners = 4096;

    /// <summary>A part of a 3MF package when it is unpacked, bytes.</summary>
    public const long PackagePartBytes = 4L << 30;

    /// <summary>How many times larger a part of a 3MF package may be than its packed form.</summary>
    public const int PackageRatio = 100;

    /// <summary>Objects and components that the build of a 3MF shows, each time it does.</summary>
    public const int PackageInstances = 1_000_000;

    /// <summary>Triangles of all that the build of a 3MF shows.</summary>
    public const int PackageTriangles = 20_000_000;

    /// <summary>Object files that are looked through in a folder for a digest.</summary>
    public const int ObjectFilesInFolder = 2000;
}
