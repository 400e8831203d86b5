namespace CalibGeom.Light;

/// <summary>One Gaussian of the sum that a raster takes a blur for.</summary>
/// <param name="Weight">Its share of the light; all shares of a blur sum to 1.</param>
/// <param name="Sigma">Its standard deviation along each axis, mm.</param>
public readonly record struct BlurComponent(double Weight, double Sigma);
