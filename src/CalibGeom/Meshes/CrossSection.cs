namespace CalibGeom.Meshes;

/// <summary>
/// Where a plane cuts a mesh: closed contours and the frame they are drawn in. Immutable and safe to share between
/// threads.
/// </summary>
public sealed class CrossSection
{
    private readonly SectionContour[] contours;

    internal CrossSection(SectionFrame frame, SectionContour[] contours)
    {
        Frame = frame;
        this.contours = contours;
    }

    /// <summary>The plane and its axes.</summary>
    public SectionFrame Frame { get; }

    /// <summary>
    /// The contours: round material counter-clockwise, round holes clockwise. Where shells of the mesh overlap,
    /// contours do too.
    /// </summary>
    public IReadOnlyList<SectionContour> Contours => contours;

    /// <summary>The sum of the signed areas, mm2: the area of the section where no shells overlap.</summary>
    public double Area => contours.Sum(c => c.SignedArea);
}
