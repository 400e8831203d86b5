namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// How the object will be printed. With it, gauge widths and column positions snap to whole pixels, and the design
/// rules say what pixels and layers do to every size. Immutable; every value is checked when it is set, so that a spec
/// that exists is in range. Compares by value.
/// </summary>
public sealed record ProcessSpec
{
    /// <summary>
    /// Size of one pixel on the plate; one number, or [x, y] where the two differ. Range 0.005 to 0.5 mm. Default 0.04
    /// mm.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public PerAxis PixelPitch
    {
        get;
        init => field = SpecParameters.ProcessPixelPitch.Require(value);
    } = ProcessDefaults.PixelPitch;

    /// <summary>Height of one layer. Range 0.005 to 0.5 mm. Default 0.05 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double LayerHeight
    {
        get;
        init => field = SpecParameters.ProcessLayerHeight.Require(value);
    } = ProcessDefaults.LayerHeight;

    /// <summary>
    /// Build volume [x, y, z] that the object must fit into. Range 10 to 1000 mm. Default [150, 90, 160] mm.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public PlateSize Plate
    {
        get;
        init => field = SpecParameters.ProcessPlate.Require(value);
    } = new(150, 90, 160);

    /// <summary>How many layers at the plate are exposed for the base time. Range 0 to 100. Default 5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public int BaseLayers
    {
        get;
        init => field = SpecParameters.ProcessBaseLayers.Require(value);
    } = ProcessDefaults.BaseLayers;

    /// <summary>Exposure time of each base layer. Range 0 to 600 s. Default 25 s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double BaseTime
    {
        get;
        init => field = SpecParameters.ProcessBaseTime.Require(value);
    } = ProcessDefaults.BaseTime;

    /// <summary>
    /// "pixels" moves gauge widths and column positions onto whole pixels, "none" leaves them as given. Default
    /// "pixels".
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the values.</exception>
    public PixelSnap Snap
    {
        get;
        init => field = SpecParameters.ProcessSnap.RequireDefined(value);
    } = PixelSnap.Pixels;
}
