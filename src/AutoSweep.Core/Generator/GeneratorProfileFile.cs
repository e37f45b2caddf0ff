using AutoSweep.Core.StrictJson;

namespace AutoSweep.Core.Generator;

/// <summary>Reads a generator profile from its strict JSON file.</summary>
public static class GeneratorProfileFile
{
    /// <summary>The schema that an editor uses for such a file.</summary>
    /// <remarks>Shipped beside the profiles as <c>generator-profile.schema.json</c>; a test compares the two.</remarks>
    public static string Schema => JsonFieldSchema.Of<GeneratorProfile>("Generator profile");

    /// <summary>Reads and checks a profile.</summary>
    /// <param name="path">The JSON file.</param>
    /// <exception cref="BenchFaultException">The file is missing or breaks the format; says field, found and expected.</exception>
    public static GeneratorProfile Read(string path) => Checked(StrictJsonFile.Read<GeneratorProfile>(path));

    /// <summary>Checks a profile whose text is at hand.</summary>
    /// <param name="text">The JSON text.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <exception cref="BenchFaultException">The text breaks the format; says the field, what was found and expected.</exception>
    public static GeneratorProfile Parse(string text, string name) => Checked(StrictJsonFile.Parse<GeneratorProfile>(text, name));

    private static GeneratorProfile Checked(CheckedJsonFile<GeneratorProfile> file) =>
        GeneratorProfileChecks.Of(file.Value).FirstOrDefault() is { } fault ? throw file.Fault(fault) : file.Value;
}
