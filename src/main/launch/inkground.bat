@echo off
rem Starts Inkground. Needs Java 17 or later: JAVA_HOME if set, else the java on the PATH.
setlocal
set "HOME_DIR=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java.exe"
if not exist "%HOME_DIR%\lib" (
    echo inkground: %HOME_DIR%\lib is missing. Build the program with: mvn -B -DskipTests package 1>&2
    exit /b 1
)
"%JAVA%" --version >nul 2>&1
if errorlevel 1 (
    echo inkground: no usable Java at "%JAVA%". Install a JDK 17 or later, or set JAVA_HOME. 1>&2
    exit /b 1
)
for /f "tokens=2 delims=. " %%v in ('""%JAVA%" --version"') do (
    set "MAJOR=%%v"
    goto :checked
)
:checked
if %MAJOR% LSS 17 (
    echo inkground: "%JAVA%" is Java %MAJOR%. Inkground needs Java 17 or later: install one and set JAVA_HOME. 1>&2
    exit /b 1
)
"%JAVA%" -Xshare:auto -XX:+UseParallelGC -XX:-UsePerfData "-Dinkground.home=%HOME_DIR%" %INKGROUND_JAVA_OPTS% -cp "%HOME_DIR%\lib\*" inkground.cli.Main %*
exit /b %ERRORLEVEL%
