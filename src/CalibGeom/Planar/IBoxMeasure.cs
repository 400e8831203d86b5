using System.Runtime.Intrinsics;

namespace CalibGeom.Planar;

/// <summary>A distance from one thing to the things in a <see cref="BoxTree"/>.</summary>
internal interface IBoxMeasure
{
    /// <summary>What the distance to anything in a box is at least; infinite where the box is inside out.</summary>
    double Gap(Vector128<float> low, Vector128<float> high);

    /// <summary>The distance to what a box stands for.</summary>
    double Distance(int item);
}
