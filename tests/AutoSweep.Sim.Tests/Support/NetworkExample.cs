using System.Globalization;
using System.Text.Json;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>One worked network of Reference/network-examples.json, built with the simulator's own elements.</summary>
internal sealed class NetworkExample
{
    /// <summary>A front end that loads nothing.</summary>
    private static readonly FrontEndDefinition NoLoad = new()
    {
        Gain = 1, InputOhms = 1e18, InputPicofarads = 0, NoiseMicrovolts = 0, OpenHumMillivolts = 0, ContactMillivolts = 0,
    };

    private readonly JsonElement example;

    private NetworkExample(JsonElement example) => this.example = example;

    public static IEnumerable<string> Names => All.Select(example => example.Name);

    public string Name => example.GetProperty("name").GetString()!;

    public double Hertz => Figure(example.GetProperty("frequencyHz"));

    public IEnumerable<(string Label, double Farads, double Level, double Ngspice)> Points => example.GetProperty("points").EnumerateArray()
        .Select(point => (
            point.GetProperty("label").GetString()!, Figure(point.GetProperty("farads")), Figure(point.GetProperty("level")),
            Figure(point.GetProperty("ngspice"))));

    private static IEnumerable<NetworkExample> All => JsonDocument
        .Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Reference", "network-examples.json")))
        .RootElement.GetProperty("examples").EnumerateArray().Select(element => new NetworkExample(element));

    public static NetworkExample Of(string name) => All.Single(example => example.Name == name);

    public OutputNetwork Network() => new(Name switch
    {
        "ex8_transformer" => Output(Parameter("Rs_ohm"), Parameter("L1_henry"), new()
        {
            Arrangement = Arrangement.Coupled, Ohms = Parameter("R2_ohm"), Henries = Parameter("L2_henry"),
            CouplingFactor = Parameter("k"), LoadOhms = Parameter("Rload_ohm"),
        }),
        "ex9_tap" => Output(Parameter("R_ohm") + Parameter("Ra"), Parameter("La"), new()
        {
            Arrangement = Arrangement.Tapped, Ohms = Parameter("Rb"), Henries = Parameter("Lb"),
        }),
        "ex11_series_c" => Output(Parameter("Rg"), Parameter("Lg"), new()
        {
            Arrangement = Arrangement.Series, Ohms = Parameter("Rp"), Henries = Parameter("L1"), SecondaryHenries = Parameter("L2"),
            SecondaryOhms = Parameter("R2"), CouplingFactor = Parameter("k"), LoadOhms = Parameter("Rload"),
        }),
        _ => Output(Parameter("R_ohm") / 2, Parameter("L_henry") / 2, new()
        {
            Arrangement = Arrangement.Shunt, Ohms = Parameter("R_ohm") / 2, Henries = Parameter("L_henry") / 2,
        }),
    }, NoLoad);

    private static OutputDefinition Output(double ohms, double henries, FilterDefinition filter) => new()
    {
        Number = 1,
        Source = new() { EmfMillivolts = 1000, Ohms = ohms, Henries = henries },
        Filter = filter,
        HumMillivolts = 0,
        WobblePercent = 0,
    };

    private double Parameter(string name) => Figure(example.GetProperty("parameters").GetProperty(name));

    private static double Figure(JsonElement text) => double.Parse(text.GetString()!, NumberStyles.Float, CultureInfo.InvariantCulture);
}
