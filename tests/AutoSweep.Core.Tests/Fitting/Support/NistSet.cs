using System.Globalization;
using System.Numerics;
using System.Text.Json;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Fitting.Support;

/// <summary>One of NIST's certified nonlinear regressions (StRD, tests/Reference/nist_nonlinear.json).</summary>
public sealed class NistSet
{
    private static readonly Lazy<Dictionary<string, NistSet>> All = new(ReadAll);

    private NistSet(JsonElement set)
    {
        Name = set.GetProperty("name").GetString()!;
        Model = NistModels.ByName[Name];
        X = Numbers(set.GetProperty("x").EnumerateArray());
        Y = Numbers(set.GetProperty("y").EnumerateArray());
        Starts = [Column(set, "start1"), Column(set, "start2")];
        Certified = Column(set, "certified");
        StandardDeviations = Column(set, "standardDeviation");
        ResidualSumOfSquares = Number(set.GetProperty("residualSumOfSquares"));
    }

    public static IReadOnlyCollection<string> Names => All.Value.Keys;

    public string Name { get; }

    /// <summary>The model, over complex parameters so that derivatives can be taken exactly by a complex step.</summary>
    public Func<Complex[], double, Complex> Model { get; }

    public double[] X { get; }

    public double[] Y { get; }

    public double[][] Starts { get; }

    public double[] Certified { get; }

    public double[] StandardDeviations { get; }

    public double ResidualSumOfSquares { get; }

    public static NistSet Named(string name) => All.Value[name];

    private static Dictionary<string, NistSet> ReadAll()
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Repository.PathOf("tests/Reference/nist_nonlinear.json")));
        return file.RootElement.GetProperty("sets").EnumerateArray().Select(set => new NistSet(set)).ToDictionary(set => set.Name);
    }

    private static double[] Column(JsonElement set, string column) =>
        Numbers(set.GetProperty("parameters").EnumerateArray().Select(parameter => parameter.GetProperty(column)));

    private static double[] Numbers(IEnumerable<JsonElement> texts) => [.. texts.Select(Number)];

    private static double Number(JsonElement text) => double.Parse(text.GetString()!, CultureInfo.InvariantCulture);
}
