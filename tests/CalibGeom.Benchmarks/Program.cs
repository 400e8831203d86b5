using System.Globalization;
using BenchmarkDotNet.Running;
using CalibGeom.Benchmarks;

if (args is ["table", ..])
    PerformanceTable.Print(Console.Out, args.ElementAtOrDefault(1) ?? "");
else if (args is ["repeat", var work, var seconds])
    PerformanceTable.Repeat(work, double.Parse(seconds, CultureInfo.InvariantCulture));
else if (args is ["exponents", ..])
    PerformanceTable.Exponents(Console.Out, args.ElementAtOrDefault(1) ?? "");
else if (args is ["growth", ..])
    GrowthTable.Print(Console.Out, args.ElementAtOrDefault(1) ?? "");
else
    BenchmarkSwitcher.FromAssembly(typeof(PerformanceTable).Assembly).Run(args);
