using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

/// <summary>A distance between the things in two <see cref="BoxTree"/>s.</summary>
internal interface IBoxPairMeasure
{
    /// <summary>
    /// What the distance between anything in two boxes is at least; infinite where a box is inside out.
    /// </summary>
    double Gap(Vector128<float> low, Vector128<float> high, Vector128<float> otherLow, Vector128<float> otherHigh);

    /// <summary>The distance between what two boxes stand for.</summary>
    double Distance(int item, int other);
}
