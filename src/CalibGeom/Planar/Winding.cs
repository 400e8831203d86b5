namespace CalibGeom.Planar;

/// <summary>Winding numbers, or changes of them, of two sets of rings.</summary>
internal readonly record struct Winding(int First, int Second)
{
    public static Winding operator +(Winding a, Winding b) => new(a.First + b.First, a.Second + b.Second);

    public static Winding operator -(Winding a) => new(-a.First, -a.Second);
}
