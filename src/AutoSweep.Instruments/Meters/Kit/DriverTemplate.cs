using System.Text.RegularExpressions;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>A new driver's folder, with everything in it that only the manual can fill left empty for the check to ask for.</summary>
public static partial class DriverTemplate
{
    private const string SchemaName = "driver.schema.json";

    /// <summary>Makes a folder.</summary>
    /// <param name="parent">The folder of drivers that it goes into; made when it is not there.</param>
    /// <param name="name">The driver's name: lower case letters, digits and hyphens.</param>
    /// <param name="capacitance">Whether the meter measures capacitance rather than level and frequency.</param>
    /// <returns>The folder.</returns>
    /// <exception cref="BenchFaultException">Another kind of name, or the folder is there already.</exception>
    public static string Make(string parent, string name, bool capacitance)
    {
        if (!FolderName().IsMatch(name))
            throw new BenchFaultException(BenchFault.BadFile, $"the name \"{name}\"", "lower case letters, digits and hyphens, such as acme-m7",
                "Choose such a name; it is the folder's and what --meter-driver takes.");
        var folder = Path.Combine(parent, name);
        if (Directory.Exists(folder) || File.Exists(folder))
            throw new BenchFaultException(BenchFault.BadFile, $"{folder} is there already", "a name that is not taken",
                "Choose another name, or go on in that folder: autosweep driver check.");
        Directory.CreateDirectory(Path.Combine(folder, DriverFolder.SessionsName));
        foreach (var (file, text) in Files(parent, name, capacitance))
            File.WriteAllText(Path.Combine(folder, file), text);
        return folder;
    }

    // In a folder of drivers that has the schema already, that one is used; else a copy goes with the driver, so that nothing outside
    // its folder is touched.
    private static IEnumerable<(string Name, string Text)> Files(string parent, string name, bool capacitance)
    {
        var shared = File.Exists(Path.Combine(parent, SchemaName));
        yield return (DriverLibrary.FileName, Filled("driver.json", name, capacitance, shared ? $"../{SchemaName}" : SchemaName));
        if (!shared)
            yield return (SchemaName, DriverSchema.Text);
        yield return (DriverFolder.CommandsName, Filled("commands.txt", name, capacitance, ""));
        yield return (Path.Combine(DriverFolder.SessionsName, "printed-examples.txt"), Filled("session.txt", name, capacitance, ""));
        yield return (DriverFolder.ReadmeName, Filled("README.md", name, capacitance, ""));
    }

    private static string Filled(string file, string name, bool capacitance, string schema) =>
        Resource($"{(capacitance ? "capacitance" : "level")}.{file}")
            .Replace("NAME", name, StringComparison.Ordinal).Replace("SCHEMA", schema, StringComparison.Ordinal);

    private static string Resource(string name)
    {
        using var stream = typeof(DriverTemplate).Assembly.GetManifestResourceStream($"template.{name}")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$")]
    private static partial Regex FolderName();
}
