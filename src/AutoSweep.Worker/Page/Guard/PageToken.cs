using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>The secret that lets a screen in when the page listens to more than this computer.</summary>
public sealed class PageToken
{
    /// <summary>Its file in the data folder, which only its owner may read.</summary>
    public const string FileName = "page-token";

    // 256 bits: nobody finds it by trying, whatever the rate.
    private const int Bytes = 32;

    private PageToken(string text) => (Text, Cookie) = (text, Base64Url.EncodeToString(Hash("cookie of " + text)));

    /// <summary>The token: 43 letters of base64url (RFC 4648, 5).</summary>
    public string Text { get; }

    /// <summary>What a screen that was let in keeps: a hash.</summary>
    /// <remarks>So a cookie that leaks lets nobody make a link, and a new token ends every cookie.</remarks>
    public string Cookie { get; }

    /// <summary>The token of a data folder; made where there is none.</summary>
    /// <exception cref="BenchFaultException">The file holds something else.</exception>
    public static PageToken Open(string folder)
    {
        var path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
            return Make(folder);
        var text = File.ReadAllText(path).Trim();
        if (!Base64Url.IsValid(text, out var length) || length != Bytes)
            throw new BenchFaultException(
                BenchFault.BadFile, $"something else than a token in {path}", "43 letters that the program wrote", "make a new one at the next start") { AtTerminal = "--new-token" };
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        return new(text);
    }

    /// <summary>Makes a new token; links and cookies of the one before let nobody in any more.</summary>
    public static PageToken Make(string folder)
    {
        Directory.CreateDirectory(folder);
        var (path, text) = (Path.Combine(folder, FileName), Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes)));
        File.Delete(path);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using var file = new StreamWriter(path, options);
        file.WriteLine(text);
        return new(text);
    }

    /// <summary>Whether it is the token; takes as long for a near miss as for a far one.</summary>
    public bool Is(string? given) => AreSame(given, Text);

    /// <summary>Whether it is the cookie of a screen that was let in with this token.</summary>
    public bool IsCookie(string? given) => AreSame(given, Cookie);

    // Hashed first: the lengths are the same then, and what takes time tells nothing of the token.
    private static bool AreSame(string? given, string expected) => CryptographicOperations.FixedTimeEquals(Hash(given ?? ""), Hash(expected));

    private static byte[] Hash(string text) => SHA256.HashData(Encoding.UTF8.GetBytes(text));
}
