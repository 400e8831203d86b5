using System.Reflection;
using CalibGeom.Light;
using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>All libraries that are packages.</summary>
internal static class PublicLibraries
{
    internal static Assembly[] All { get; } =
    [
        typeof(Finding).Assembly,
        typeof(TestObject).Assembly,
        typeof(Trial).Assembly,
        typeof(LightDose).Assembly,
        typeof(Drawing).Assembly,
        typeof(Testing.VirtualBench).Assembly,
    ];
}
