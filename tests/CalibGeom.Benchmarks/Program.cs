using BenchmarkDotNet.Running;
using CalibGeom.Benchmarks;

if (args is ["table", ..])
    PerformanceTable.Print(Console.Out);
else if (args is ["exponents", ..])
    PerformanceTable.Exponents(Console.Out);
else if (args is ["growth", ..])
    GrowthTable.Print(Console.Out, args.ElementAtOrDefault(1) ?? "");
else
    BenchmarkSwitcher.FromAssembly(typeof(PerformanceTable).Assembly).Run(args);
