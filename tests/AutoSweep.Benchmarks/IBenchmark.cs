using Spectre.Console;

namespace AutoSweep.Benchmarks;

/// <summary>One subject that is measured.</summary>
internal interface IBenchmark
{
    /// <summary>The word on the command line.</summary>
    string Name { get; }

    /// <summary>What it measures, for the list of benchmarks.</summary>
    string Summary { get; }

    /// <summary>Measures, shows tables for people, and returns the figures for scripts.</summary>
    IReadOnlyList<Figure> Run(IAnsiConsole console);
}
