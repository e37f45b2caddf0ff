using AutoSweep.Core.StrictJson;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>Holds what a driver sends against the headers that its <c>commands.txt</c> copies from the manual.</summary>
internal static class CommandList
{
    /// <summary>Every fault of the list, and of what is sent.</summary>
    public static IEnumerable<DriverFault> Faults(DriverFolder folder, CheckedJsonFile<MeterDriver> driver)
    {
        var file = folder.FileOf(DriverFolder.CommandsName);
        if (folder.CommandLines is not { } lines)
            return [new($"{file} is missing", "the command headers as the manual prints them, one a line",
                "Write them down, such as [SENSe:]DETector:BANDwidth, with the manual's name in a line \"# Source: …\".")];
        List<(int Line, ScpiHeader Header)> headers = [];
        List<DriverFault> faults = [];
        foreach (var (index, line) in lines.Index().Where(line => line.Item.Length > 0 && line.Item[0] != '#'))
            if (HeaderOf(line) is { } header)
                headers.Add((index + 1, header));
            else
                faults.Add(NoHeader($"{file}, line {index + 1}", line));
        if (!lines.Any(line => line.StartsWith("# Source:", StringComparison.Ordinal)))
            faults.Add(new($"{file} names no source", "a line \"# Source: …\"", "Name the manual and the page."));
        var sent = Sent(driver.Value).ToArray();
        return
        [
            .. faults,
            .. sent.Where(one => one.Text.Length > 0 && !headers.Any(header => header.Header.Matches(HeaderText(one.Text)))).Select(one => NotInList(driver, file, one)),
            .. headers.Where(header => !sent.Any(one => header.Header.Matches(HeaderText(one.Text)))).Select(header => NotSent(file, header)),
        ];
    }

    /// <summary>Everything that goes to the meter, with the field that it stands in.</summary>
    public static IEnumerable<(string Path, string Text)> Sent(MeterDriver driver) =>
    [
        .. driver.Commands(), .. driver.ErrorQuery is { } query ? [("errorQuery", query)] : Array.Empty<(string, string)>(),
        ("identity", "*IDN?"),
    ];

    private static string HeaderText(string command) => command.Split(' ')[0];

    private static ScpiHeader? HeaderOf(string line)
    {
        try
        {
            return new(line.Trim());
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static DriverFault NoHeader(string where, string line) => new(
        $"{where}: \"{line}\"", "a header in the manuals' notation, such as [SENSe:]VOLTage:AC:RANGe[:UPPer] or READ?",
        "Capitals are the short form; what may be left out stands in brackets; no arguments.");

    private static DriverFault NotInList(CheckedJsonFile<MeterDriver> driver, string file, (string Path, string Text) sent) => DriverFault.Of(driver.Fault(new(
        sent.Path, $"\"{sent.Text}\" is no header of {DriverFolder.CommandsName}", $"one of the headers in {file}, in its short or its long form",
        "Correct the command, or add its header as the manual prints it.")));

    private static DriverFault NotSent(string file, (int Line, ScpiHeader Header) header) => new(
        $"{file}, line {header.Line}: nothing in driver.json sends {header.Header}", "only headers that the driver sends",
        "Delete the line, or add the command that is missing from driver.json.");
}
