using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>A driver with one command deleted, and which part of the check minds.</summary>
/// <param name="Line">The command that was deleted, with its file.</param>
/// <param name="MindedBy">The first part of the check that finds a fault: <c>driver.json</c>, <c>sessions</c>, <c>commands.txt</c>; null
/// where none does.</param>
public sealed partial record DriverMutant(string Line, string? MindedBy)
{
    /// <summary>Deletes every command of a driver in turn, in <c>driver.json</c> and in <c>commands.txt</c>, and checks what is left.</summary>
    /// <param name="folder">A folder whose <c>driver.json</c> is in order.</param>
    /// <exception cref="Core.BenchFaultException"><c>driver.json</c> cannot be understood.</exception>
    public static async Task<IReadOnlyList<DriverMutant>> RunAsync(DriverFolder folder)
    {
        List<DriverMutant> mutants = [];
        foreach (var (line, mutated) in Mutated(folder))
            mutants.Add(new(line, await DriverFolderCheck.MindsAsync(mutated)));
        return mutants;
    }

    private static IEnumerable<(string Line, DriverFolder Folder)> Mutated(DriverFolder folder)
    {
        var driver = StrictJsonFile.Parse<MeterDriver>(folder.DriverText, folder.FileOf(DriverLibrary.FileName)).Value;
        foreach (var (path, text) in driver.Commands())
            yield return ($"{DriverLibrary.FileName}: {path} \"{text}\"", folder with { DriverText = Without(folder.DriverText, path) });
        // Left out it would mean SYST:ERR?; null is a meter without an error queue.
        if (driver.ErrorQuery is { } query)
            yield return ($"{DriverLibrary.FileName}: errorQuery \"{query}\"", folder with { DriverText = WithNull(folder.DriverText, "errorQuery") });
        foreach (var (index, line) in (folder.CommandLines ?? []).Index().Where(line => line.Item.Length > 0 && line.Item[0] != '#'))
            yield return ($"{DriverFolder.CommandsName}: {line}", folder with { CommandLines = [.. folder.CommandLines!.Where((_, at) => at != index)] });
    }

    private static string Without(string json, string path)
    {
        var root = JsonNode.Parse(json)!;
        var steps = Step().Matches(path).Select(step => step.Value).ToList();
        // A command's field stands for the whole command with its "required" and "why".
        if (steps[^1] == "command")
            steps.RemoveAt(steps.Count - 1);
        var parent = steps[..^1].Aggregate(root, (node, step) => (int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var at) ? node[at] : node[step])!);
        if (parent is JsonArray list)
            list.RemoveAt(int.Parse(steps[^1], CultureInfo.InvariantCulture));
        else
            parent.AsObject().Remove(steps[^1]);
        return root.ToJsonString(StrictJsonOptions.Shared);
    }

    private static string WithNull(string json, string field)
    {
        var root = JsonNode.Parse(json)!;
        root[field] = null;
        return root.ToJsonString(StrictJsonOptions.Shared);
    }

    [GeneratedRegex("[A-Za-z]+|[0-9]+")]
    private static partial Regex Step();
}
