namespace CalibGeom.Formats;

/// <summary>Opens input files with messages a person can act on.</summary>
internal static class InputFile
{
    internal static FileStream Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        try
        {
            return new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.Read,
                bufferSize: 1,
                FileOptions.SequentialScan
            );
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(InputIds.File, $"There is no file {path}. Check the name.", e);
        }
        catch (UnauthorizedAccessException e) when (Directory.Exists(path))
        {
            throw new InputException(InputIds.File, $"{path}: this is a directory. Name a mesh in STL, OBJ or 3MF.", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(InputIds.File, $"Cannot read {path}: {e.Message}", e);
        }
    }
}
