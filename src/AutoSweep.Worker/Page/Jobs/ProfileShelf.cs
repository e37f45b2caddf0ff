using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Jobs;

/// <summary>The generators that are at hand: shipped ones, and the shop's own files in the data folder.</summary>
/// <param name="folder">The folder of the shop's own profiles; need not be there.</param>
public sealed class ProfileShelf(string folder)
{
    private const int LongestName = 60;

    /// <summary>Its name in the data folder.</summary>
    public const string FolderName = "generators";

    /// <summary>Reads every profile, each with its variants.</summary>
    /// <returns>What can be chosen, own files first; and own files that cannot be used, each with the reason.</returns>
    public (IReadOnlyList<ProfileChoice> Choices, IReadOnlyList<BenchFaultException> PassedOver) Read()
    {
        List<ProfileChoice> choices = [];
        List<BenchFaultException> passedOver = [];
        foreach (var file in Files())
        {
            try
            {
                choices.AddRange(Varied(Path.GetFileName(file), GeneratorProfileLibrary.Open(file), isOwn: true));
            }
            catch (BenchFaultException fault)
            {
                passedOver.Add(fault);
            }
        }

        // Practice generators come last: nobody has one on the bench.
        choices.AddRange(GeneratorProfileLibrary.Names.SelectMany(name => Varied(name, GeneratorProfileLibrary.Open(name), isOwn: false))
            .OrderBy(choice => choice.Profile.Invented));
        return (choices, passedOver);
    }

    /// <summary>Checks a profile that was sent and keeps it among the shop's own.</summary>
    /// <returns>The choice that it makes.</returns>
    /// <exception cref="BenchFaultException">It breaks the format, or cannot be kept.</exception>
    public ProfileChoice Keep(UploadedFile sent)
    {
        var profile = GeneratorProfileFile.Parse(sent.Text, sent.Name);
        var path = FreePath(profile.Name, sent.Text);
        WholeFile.Replace(path, sent.Text);
        return new(Path.GetFileName(path), profile, IsOwn: true);
    }

    private static IEnumerable<ProfileChoice> Varied(string key, GeneratorProfile profile, bool isOwn) =>
        [new(key, profile, isOwn), .. profile.Variants.Keys.Order(StringComparer.Ordinal)
            .Select(variant => new ProfileChoice($"{key}#{variant}", profile.WithVariant(variant), isOwn))];

    private string[] Files() => Directory.Exists(folder) ? [.. Directory.GetFiles(folder, "*.json").Order(StringComparer.Ordinal)] : [];

    // The name is the program's own, out of letters and digits: what the sender called the file is no path here. Nothing kept is written over.
    private string FreePath(string name, string text)
    {
        var letters = string.Concat(name.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-')).Trim('-');
        var stem = letters.Length is 0 ? "generator" : letters[..Math.Min(letters.Length, LongestName)];
        for (var number = 1; ; number++)
        {
            var path = Path.Combine(folder, number == 1 ? $"own-{stem}.json" : FormattableString.Invariant($"own-{stem}-{number}.json"));
            if (!File.Exists(path) || File.ReadAllText(path) == text)
                return path;
        }
    }
}
